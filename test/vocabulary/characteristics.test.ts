import { CHARACTERISTICS } from "../../src/vocabulary/characteristics.ts";
import { measuredBy, ownCharacteristic } from "../../src/vocabulary/subjects.ts";

const named = (isIt: (one: (typeof CHARACTERISTICS)[string]) => boolean): string[] =>
  Object.entries(CHARACTERISTICS).flatMap(([name, one]) => (isIt(one) ? [name] : []));

// A difference of two sizes below 0 says that the parts do not fit, or that the wrong size is taken for the standard one.
test("what is worked out as the difference of two sizes may be negative, and so may depths and volumes with a sign", () => {
  expect(named(({ isNeverNegative }) => !isNeverNegative)).toEqual([
    ...["bore wear", "piston clearance", "pin clearance", "ring side clearance", "stem clearance"],
    ...["crankpin wear", "main journal wear", "bearing clearance", "main bearing clearance", "big end clearance"],
    ...["deck height", "squish", "piston volume"],
  ]);
});

// Common practice: holes and gaps wear larger, what runs in them smaller, and a worn engine holds less pressure.
test("holes, gaps and clearances wear larger, shafts, rings and pressures smaller; the others may go either way", () => {
  expect(named(({ wears }) => wears === "smaller")).toEqual([
    ...["piston skirt", "piston pin", "ring width", "valve stem", "crankpin", "main journal"],
    ...["compression pressure", "wet compression", "pressure held"],
  ]);
  expect(named(({ wears }) => wears === undefined)).toEqual([
    ...["standard bore", "valve clearance", "deck height", "squish", "stroke", "chamber volume", "piston volume"],
    ...["compression ratio", "supply pressure"],
  ]);
});

test.each([
  ["Ring end gap", "Top", "top ring end gap"],
  ["Ring gap, 2nd", "", "second ring end gap"],
  ["Side clearance", "oil ring", "oil ring side clearance"],
  ["Tappet clearance", "EX 2", "exhaust valve clearance"],
  ["Intake stem", "", "inlet valve stem"],
  ["Bore", "top thrust", "bore"],
  ["Main bearing clearance", "", "main bearing clearance"],
  ["Big end clearance", "", "big end clearance"],
  ["Flywheel runout", "rim", "flywheel runout"],
])("%s at %s is %s", (characteristic, position, own) => {
  expect(ownCharacteristic(measuredBy(characteristic, position))).toBe(own);
});

test("a general word is one of those by which its characteristic is known", () => {
  for (const [name, { words, general = [] }] of Object.entries(CHARACTERISTICS)) expect(general.filter((word) => ![name, ...words].includes(word))).toEqual([]);
});
