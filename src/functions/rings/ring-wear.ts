import { decimal } from "../../core/decimal.ts";
import { define, value } from "../../core/define.ts";
import { unlike } from "../../core/fault.ts";
import { length } from "../../core/inputs.ts";

/**
 * Wear of a ring's face from the growth of its gap. A ring that loses w of its radius closes up onto
 * a circle 2w smaller and its gap opens by 2πw; a bore that has itself worn opens the gap by π ×
 * its growth, which is taken off first. Source: geometry of the circle.
 */
export const ringWear = define({
  name: "RINGWEAR",
  group: "rings",
  role: "measures",
  summary: "Radial wear of a ring's face from the growth of its end gap, less what the bore's wear adds",
  definition: "((gapAfter − gapBefore) − π × (boreAfter − boreBefore)) ÷ 2π",
  source: "geometry of the circle: a gap grows by π × the growth of the diameter that the ring must fill",
  params: {
    gapBefore: length("end gap when the ring was fitted"),
    gapAfter: length("end gap now"),
    boreBefore: length("bore where the first gap was measured; blank for both gaps in one bore").optional(),
    boreAfter: length("bore where the gap is measured now").optional(),
  },
  returns: value("wear of the ring's face, in the unit of the gaps; below 0 the readings contradict each other"),
  examples: [
    { formula: "=HATCH.RINGWEAR(0.3, 0.55)", gives: 0.039789 },
    { formula: "=HATCH.RINGWEAR({0.30;0.30;0.35}, {0.55;0.42;0.6}, 73, 73.03)", gives: [[0.024789], [0.004099], [0.024789]] },
  ],
  notes: [
    "Measure both gaps at one place: the unworn top of the bore, or the same plug gauge; then no bore sizes are needed.",
    "With one of the two bore sizes the result stays blank until the other is there.",
  ],
  compute: ({ gapBefore, gapAfter, boreBefore, boreAfter }) => {
    if (boreBefore === undefined && boreAfter === undefined) return wear(gapAfter - gapBefore, 0);
    if (boreBefore === undefined || boreAfter === undefined) return "";
    return unlike("boreAfter", boreAfter, "boreBefore", boreBefore) ?? wear(gapAfter - gapBefore, boreAfter - boreBefore);
  },
});

const wear = (gapGrowth: number, boreGrowth: number): number => decimal((gapGrowth - Math.PI * boreGrowth) / (2 * Math.PI));
