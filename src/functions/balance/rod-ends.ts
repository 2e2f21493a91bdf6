import { decimal, isAbove, isBelow } from "../../core/decimal.ts";
import { define, row } from "../../core/define.ts";
import { refuse } from "../../core/fault.ts";
import { mass } from "../../core/inputs.ts";

const COLUMNS = ["big end", "small end", "total", "missing"] as const;
/** Ends weighed level on a good support add up to the whole within this share. */
const MOST_MISSING = 0.01;

/** A connecting rod's mass as shared between its ends. Source: common practice. */
export const rodEnds = define({
  name: "RODENDS",
  group: "balance",
  role: "describes",
  summary: "A connecting rod's mass at its big and small end, and what the two weighings miss",
  definition: "small end = total − bigEnd unless weighed; missing = total − bigEnd − smallEnd",
  source: "common practice",
  params: {
    total: mass("the whole rod with cap and bolts, without shells"),
    bigEnd: mass("its big end on the scale, the small end hung level"),
    smallEnd: mass("its small end on the scale, the big end hung level; blank to take the rest of the total").optional(),
  },
  returns: row(COLUMNS, "a row of labels, then one for each rod, in the unit given; missing only where both ends were weighed"),
  examples: [
    { formula: "=HATCH.RODENDS(612, 430)", gives: [[...COLUMNS], [430, 182, 612, ""]] },
    { formula: "=HATCH.RODENDS({612;609.5}, {430;428.6}, {181.4;180.9})", gives: [[...COLUMNS], [430, 181.4, 612, 0.6], [428.6, 180.9, 609.5, 0]] },
  ],
  notes: [
    "The big end turns with the crankshaft, the small end goes up and down: HATCH.BOBWEIGHT needs them separately.",
    "Both ends weighed check one another: more than 1 % of the total missing or too much is refused. Keep the rod level and free.",
    "HATCH.MASSMATCH over the big ends and over the small ends says what to take off.",
  ],
  compute: ({ total, bigEnd, smallEnd }) => {
    if (!isBelow(bigEnd, total)) return refuse("bigEnd", bigEnd, `one end weighs less than the whole rod, ${decimal(total)}`);
    if (smallEnd === undefined) return [bigEnd, decimal(total - bigEnd), total, ""];
    const missing = decimal(total - bigEnd - smallEnd);
    return isAbove(Math.abs(missing), MOST_MISSING * total)
      ? refuse("smallEnd", smallEnd, `with the big end it leaves ${missing} of the total ${decimal(total)}, more than 1 %: weigh again, with the rod level`)
      : [bigEnd, smallEnd, total, missing];
  },
});
