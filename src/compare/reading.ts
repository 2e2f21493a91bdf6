import { labelFrom } from "../vocabulary/headings.ts";
import { measuredBy, ownerKey, positionText } from "../vocabulary/parse-heading.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";

/** What a reading is of, in the words of the sheet or file; `""` where it does not say. */
export interface Subject {
  engine: string;
  cylinder: string;
  characteristic: string;
  position: string;
}

/** One reading of one side of a comparison, with all that stands beside it. */
export interface Reading extends Subject {
  /** `null` for a reading that is still blank, or no good: then `fault` says why. */
  value: number | null;
  fault?: string;
  unit?: string | undefined;
  /** Expanded uncertainty U of the value, in its unit. */
  uncertainty?: number | undefined;
  lower?: number | undefined;
  upper?: number | undefined;
  /** Hours in service when it was measured. */
  hours?: number | undefined;
  cell: CellAddress;
  /** Line of the file, for readings that stand in none of a workbook's cells. */
  line?: number;
}

/** One side of a comparison: everything that was read from a workbook or file. */
export interface ReadingSet {
  name: string;
  readings: Reading[];
  /** What a person should know about how it was read, in sentences. */
  notes: string[];
}

/** `engine A, cylinder 2, bore, top thrust`, or the place of a reading that has no name. */
export const labelOf = (reading: Subject & Pick<Reading, "cell">): string => labelFrom(reading) || placeName(reading.cell);

/** The same for readings of the same thing, however it is spelt; of one engine against another without the engine. */
export function keyOf({ engine, cylinder, characteristic, position }: Subject, withEngine: boolean): string {
  const measured = measuredBy(characteristic, position);
  const owners = [withEngine ? ownerKey("engine", engine) : "", ownerKey("cylinder", cylinder)];
  return [...owners, measured.characteristic, positionText(measured.places)].join("|");
}
