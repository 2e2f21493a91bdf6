import fc from "fast-check";

/** A size as a gauge shows it: hundredths of a millimetre, or tenths of a thou. */
export const millimetres = fc.integer({ min: 5_000, max: 20_000 }).map((hundredths) => hundredths / 100);
export const inches = fc.integer({ min: 20_000, max: 80_000 }).map((tenths) => tenths / 10_000);
/** A wear or clearance beside such sizes, in millimetres. */
export const small = fc.integer({ min: 1, max: 60 }).map((hundredths) => hundredths / 100);

/** One bore near 73 mm: 2 to 5 heights, 2 to 4 axes, readings to a hundredth. */
export const bore = fc.tuple(fc.integer({ min: 2, max: 5 }), fc.integer({ min: 2, max: 4 })).chain(([heights, axes]) => boreOf(heights, axes));

export const boreOf = (heights: number, axes: number) => {
  const reading = fc.integer({ min: 7290, max: 7390 }).map((hundredths) => hundredths / 100);
  return fc.array(fc.array(reading, { minLength: axes, maxLength: axes }), { minLength: heights, maxLength: heights });
};

export const transpose = <T>(block: readonly (readonly T[])[]): T[][] => block[0]!.map((_, column) => block.map((row) => row[column]!));
/** Every reading in inches, unrounded. */
export const inInches = (block: readonly (readonly number[])[]): number[][] => block.map((row) => row.map((reading) => reading / 25.4));
