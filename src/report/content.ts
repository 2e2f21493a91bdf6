import type { CheckResult, JudgedRow, JudgedRows } from "../check/finding.ts";
import type { BoreReadings } from "../drawings/bore.ts";
import type { ChangePlot } from "../drawings/change-plot.ts";
import type { CompressionTest } from "../drawings/compression-bars.ts";
import type { FaceHeights } from "../drawings/face-heights.ts";
import type { RoundTrace } from "../drawings/roundness-trace.ts";
import type { TurnReadings } from "../drawings/run-out-trace.ts";
import type { SurfaceProfile } from "../drawings/surface-profile.ts";

/** An entry of the sheet that says whose engine it is: `Serial number`, `0417`. */
export interface IdentityEntry {
  name: string;
  text: string;
}

/** A table of the sheet, copied as it stands. */
export interface CopiedTable {
  headings: string[];
  rows: string[][];
}

export interface LimitRow {
  characteristic: string;
  lower: string;
  upper: string;
  unit: string;
  near: string;
  source: string;
}

/** Something to draw, and where it stands in the sheet. */
export interface Placed<T> {
  what: T;
  place: string;
}

/** A number of the sheets, and the verdicts on it. */
export interface MeasuredCell {
  value: number | string | null;
  judged: readonly JudgedRow[];
}

/** What was measured: a row each, with a cell for each of the owners (`Cylinder 1`, `Main 3`); of one that is `""`, what belongs to none of them. */
export interface MeasuredTable {
  owners: readonly string[];
  rows: readonly { name: string; cells: readonly (MeasuredCell | null)[] }[];
}

/** Readings and results of one sheet. */
export interface MeasuredPart {
  title: string;
  tables: readonly MeasuredTable[];
}

/** What stands at the head of the paper: the shop's own words, and its mark as a picture file in Base64. */
export interface ShopHead {
  /** The sheet on which it stands. */
  sheet: string;
  name: string;
  lines: readonly string[];
  picture?: string | undefined;
}

/** What the sheets hold beside verdicts. Plain data, so that it can be handed from one thread to another. */
export interface SheetContent {
  identity: IdentityEntry[];
  /** Gauges with what is known of them, and what was measured with which. */
  gauges: CopiedTable[];
  limits: LimitRow[];
  bores: Placed<BoreReadings>[];
  traces: Placed<RoundTrace>[];
  turns: Placed<TurnReadings>[];
  faces: Placed<FaceHeights>[];
  surfaces: Placed<SurfaceProfile>[];
  tests: Placed<CompressionTest>[];
  changes: Placed<ChangePlot>[];
  /** Readings and results, sheet by sheet. */
  measured: MeasuredPart[];
  /** Torques and parts as they stand, each under the name of its sheet. */
  records: (CopiedTable & { title: string })[];
  remarks: Remark[];
  shop?: ShopHead | undefined;
}

/** What somebody wrote beside the numbers, and about what. */
export interface Remark {
  about: string;
  text: string;
}

/** Readings in long form hold none of it. */
export const NO_SHEET_CONTENT: SheetContent = {
  identity: [],
  gauges: [],
  limits: [],
  bores: [],
  traces: [],
  turns: [],
  faces: [],
  surfaces: [],
  tests: [],
  changes: [],
  measured: [],
  records: [],
  remarks: [],
};

/** One checked input. */
export interface ReportInput {
  name: string;
  result: CheckResult;
  /** All findings by their words, where there are more than are kept in the result. */
  all?: { count: number; words: ReadonlyMap<string, number> } | undefined;
  judged: Pick<JudgedRows, "rows" | "counts">;
  content: SheetContent;
  /** What a person should know about how it was read. */
  notes: readonly string[];
  /** Why it, or its rest, could not be read. */
  unread?: string | undefined;
  /** What the input was, so that anybody can see later whether it is still the same. */
  fingerprint?: Fingerprint | undefined;
}

export interface Fingerprint {
  /** SHA-256 in hexadecimal. */
  sha256: string;
  /** The file byte by byte, or the values and formulas as the host gave them, which have no file. */
  of: "file" | "contents";
}
