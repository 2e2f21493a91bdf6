import type { CheckResult, JudgedRows } from "../check/finding.ts";
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
