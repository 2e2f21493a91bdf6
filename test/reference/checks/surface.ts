import { fromScipy, SCIPY } from "../scipy-values.ts";
import { type Check, checksOf, list } from "./check.ts";

const BY_NUMPY = `${SCIPY}: Gaussian mean line by numpy.convolve, sections by reshape, the material ratio curve by sort, polyfit and interp`;
const RIGHT = "geometry: as fast along the bore as round it the scratches stand at 45° to the line across, so at 90° to one another; 251.327 is π × 80";
const HAND = "arc tangent of 2 × 110 × 50 by π × 73 × 160, by Python's math.atan";

const TRIANGLE = Array.from({ length: 100 }, (_, i) => [0, 1, 2, 3, 4, 5, 4, 3, 2, 1][i % 10]!);

/** Surface texture and honing. */
export const SURFACE: readonly Check[] = [
  ...checksOf("HONEANGLE", RIGHT, "computed", [["=HATCH.HONEANGLE(80, 100, 251.327412287183, 200)", 90, { within: 1e-8 }]]),
  ...checksOf("HONEANGLE", HAND, "computed", [["=HATCH.HONEANGLE(73, 50, 110, 160)", 33.37516358642729, { within: 1e-9 }]]),
  ...checksOf(
    "SURFACE",
    "ISO 21920-2, from memory: a saw of height 5 in ten steps has a mean departure of 1.3 about its mean of 2.5, and sections of 5",
    "computed",
    [
      [`=HATCH.SURFACE(${list(TRIANGLE)}, 0.01, 0)`, 1.3, { at: [2, 1] }],
      [`=HATCH.SURFACE(${list(TRIANGLE)}, 0.01, 0)`, 5, { at: [2, 3] }],
    ],
  ),
  ...["short", "plateau", "ground"].flatMap((name) => {
    const [cutoff, ...profile] = fromScipy(name);
    const formula = `=HATCH.SURFACE(${list(profile)}, ${0.8 / cutoff!})`;
    return checksOf(
      "SURFACE",
      BY_NUMPY,
      "computed",
      fromScipy(`${name}-texture`).map((value, at) => [formula, value, { at: [2, at + 1], within: 1e-8 }]),
    );
  }),
];
