/**
 * The sample comparison: engine A of the invented yard as it was built, and stripped down after 850
 * hours of hire. What is planted, and what must be found, is told in samples/compare/README.md.
 */
const HEADER = "engine,cylinder,characteristic,position,value,lower,upper,unit,uncertainty,hours";
const HOURS = 850;

interface Characteristic {
  name: string;
  positions: readonly string[];
  lower: number | "";
  upper: number | "";
  /** U of the gauge at the build and at the strip-down. */
  uncertainty: readonly [number, number];
  digits: number;
  /** By cylinder, for each position: built, stripped down. Text stands as it was typed, `null` for no row. */
  sizes: readonly (readonly (readonly [number | string | null, number | string | null])[])[];
}

const CHARACTERISTICS: readonly Characteristic[] = [
  {
    name: "bore",
    positions: ["top thrust", "top pin", "middle thrust", "middle pin", "bottom thrust", "bottom pin"],
    lower: 73,
    upper: 73.08,
    uncertainty: [0.003, 0.004],
    digits: 3,
    sizes: [
      [
        [73.012, 73.024],
        [73.01, 73.019],
        [73.011, 73.018],
        [73.009, 73.013],
        [73.01, 73.012],
        [73.008, 73.009],
      ],
      [
        [73.02, 73.054],
        [73.014, 73.038],
        [73.015, 73.03],
        [73.012, 73.022],
        [73.013, 73.017],
        [73.01, 73.013],
      ],
      [
        [73.015, 73.025],
        [73.013, 73.021],
        [73.025, 73.03],
        [73.012, 73.016],
        [73.011, 73.013],
        [73.01, 73.01],
      ],
    ],
  },
  {
    name: "skirt",
    positions: ["90 degrees to pin"],
    lower: 72.95,
    upper: 73,
    uncertainty: [0.002, 0.002],
    digits: 3,
    sizes: [[[72.975, 72.968]], [[72.974, 72.961]], [[72.976, 72.974]]],
  },
  {
    name: "ring end gap",
    positions: ["top ring", "second ring"],
    lower: 0.25,
    upper: 0.55,
    uncertainty: [0.02, 0.02],
    digits: 2,
    sizes: [
      [
        [0.3, 0.34],
        [0.32, 0.34],
      ],
      [
        [0.31, 0.44],
        [0.33, ""],
      ],
      [
        [0.3, 0.33],
        [0.31, 0.32],
      ],
    ],
  },
  {
    name: "crankpin",
    positions: ["across", "along"],
    lower: 39.96,
    upper: 40,
    uncertainty: [0.002, 0.002],
    digits: 3,
    sizes: [
      [
        [39.984, 39.983],
        [39.986, "1.5741"],
      ],
      [
        [39.985, "scored"],
        [39.984, 39.983],
      ],
      [
        [39.983, 39.982],
        [39.985, "93.984"],
      ],
    ],
  },
  {
    name: "inlet valve clearance",
    positions: [""],
    lower: 0.15,
    upper: 0.25,
    uncertainty: [0.01, 0.01],
    digits: 2,
    sizes: [[[0.2, 0.18]], [[0.2, 0.19]], [[0.21, 0.2]]],
  },
  { name: "exhaust valve clearance", positions: [""], lower: 0.25, upper: 0.35, uncertainty: [0.01, 0.01], digits: 2, sizes: [[[0.3, null]]] },
  { name: "small end", positions: ["across"], lower: "", upper: 22.03, uncertainty: [0.002, 0.002], digits: 3, sizes: [[[null, 22.014]]] },
];

/** The unit typed in one row at the strip-down; all others are in millimetres. */
const IN_INCHES = "1.5741";

function side(at: 0 | 1): string {
  const lines = [HEADER];
  for (const { name, positions, lower, upper, uncertainty, digits, sizes } of CHARACTERISTICS) {
    for (const [cylinder, places] of sizes.entries()) {
      for (const [place, pair] of places.entries()) {
        const size = pair[at]!;
        if (size === null) continue;
        const value = typeof size === "number" ? size.toFixed(digits) : size;
        const unit = value === IN_INCHES ? "in" : "mm";
        lines.push(["A", cylinder + 1, name, positions[place], value, lower, upper, unit, uncertainty[at], at * HOURS].join(","));
      }
    }
  }
  return `${lines.join("\r\n")}\r\n`;
}

/** The files of samples/compare/ by name. */
export const compareSamples = (): Record<string, string> => ({ "build.csv": side(0), "strip-down.csv": side(1) });
