import { indexOfRole } from "../core/define.ts";
import { evaluateNode } from "../formula/evaluate.ts";
import type { OwnCall } from "../formula/own-calls.ts";
import type { SheetLabels } from "../layout/labels.ts";
import { type CellAddress, placeName } from "../workbook/address.ts";
import { type FindingCollector, unjudged } from "./collect.ts";

interface Typed {
  at: CellAddress;
  lower: number | null;
  upper: number | null;
  cells: number;
  /** The last cell, as one formula may judge more than once. */
  last: string;
}

/** Limits that stand as numbers inside formulas, where nobody sees them: told once for each limit of a sheet. */
export class TypedLimits {
  readonly #found = new Map<string, Typed>();

  constructor(
    readonly report: FindingCollector,
    readonly labels: SheetLabels,
  ) {}

  look({ spec, args, refers, at, context }: OwnCall): void {
    // A call without any reference judges nothing of the sheet: it is a sum on the side.
    if (!refers[indexOfRole(spec, "value")]) return;
    const [lower = null, upper = null] = (["lower", "upper"] as const).map((side) => {
      const index = indexOfRole(spec, side);
      const node = args[index];
      const number = node && !refers[index] ? evaluateNode(node, context) : null;
      // No size is below 0, so that 0 is a limit of nature, not one that somebody chose.
      return typeof number === "number" && number !== 0 ? number : null;
    });
    if (lower === null && upper === null) return;
    const key = `${at.sheet}|${lower}|${upper}`;
    const known = this.#found.get(key) ?? { at, lower, upper, cells: 0, last: "" };
    this.#found.set(key, known);
    const place = placeName(at);
    if (known.last !== place) known.cells++;
    known.last = place;
  }

  finish(): void {
    for (const { at, lower, upper, cells } of this.#found.values()) {
      this.report.find("limit in formula", unjudged({ cell: at, label: this.labels.of(at) }, null, lower, upper), { formulas: cells });
    }
  }
}
