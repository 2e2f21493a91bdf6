import { type Cell, isBlank, isCellError, isErrorCode } from "../core/cell.ts";
import { CHECK_PREFIX } from "../core/sentences.ts";
import type { Verdict } from "../core/verdict.ts";
import type { FindingKind } from "./finding.ts";

/** What the cell of a verdict, an explanation or a margin says, for formulas that cannot be looked into. */
export type Said = { verdict: Verdict; margin: number | null } | { refused: string } | "blank" | "unclear";

// Words of VERDICT and of EXPLAIN's sentences; the doubtful ones first, as their sentences name a limit too.
const WORDS: readonly (readonly [RegExp, Verdict])[] = [
  [/\bnot proven\b/, "not proven"],
  [/\bnear limit\b/, "near limit"],
  [/\bover\b/, "over"],
  [/\bunder\b/, "under"],
  [/\bwithin\b/, "within"],
];

export function readVerdict(cell: Cell): Said {
  if (isBlank(cell)) return "blank";
  if (typeof cell === "number") return { verdict: cell < 0 ? "over" : "within", margin: cell };
  if (isCellError(cell)) return { refused: cell.message ?? `the formula gives ${cell.error}` };
  if (typeof cell !== "string") return "unclear";
  if (isErrorCode(cell)) return { refused: `the formula gives ${cell}` };
  if (cell.startsWith(CHECK_PREFIX)) return { refused: cell.slice(CHECK_PREFIX.length) };
  const found = WORDS.find(([word]) => word.test(cell));
  return found ? { verdict: found[1], margin: null } : "unclear";
}

/** The kind of finding that a verdict is; `within` is none. */
export const KIND_OF_VERDICT = {
  over: "outside limit",
  under: "outside limit",
  "not proven": "not proven",
  "near limit": "near limit",
  within: undefined,
} as const satisfies Record<Verdict, FindingKind | undefined>;
