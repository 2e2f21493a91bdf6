/**
 * The sample readings in long form: both engines of the invented yard, with slips planted in the
 * rows named by PLANTED. What each must lead to is told in samples/README.md.
 */
const HEADER = ["engine", "cylinder", "characteristic", "position", "value", "lower", "upper", "unit", "uncertainty"];

interface Characteristic {
  name: string;
  positions: readonly string[];
  nominal: number;
  lower: number | "";
  upper: number | "";
  uncertainty: number | "";
  digits: number;
}

const CHARACTERISTICS: readonly Characteristic[] = [
  {
    name: "bore",
    positions: ["top thrust", "top pin", "middle thrust", "middle pin", "bottom thrust", "bottom pin"],
    nominal: 73.02,
    lower: 73,
    upper: 73.08,
    uncertainty: 0.003,
    digits: 3,
  },
  { name: "skirt", positions: ["90 degrees to pin"], nominal: 72.98, lower: 72.95, upper: 73, uncertainty: 0.002, digits: 3 },
  { name: "ring end gap", positions: ["top ring", "second ring"], nominal: 0.32, lower: 0.25, upper: 0.55, uncertainty: 0.02, digits: 2 },
  { name: "inlet valve clearance", positions: ["valve 1", "valve 2"], nominal: 0.2, lower: 0.15, upper: 0.25, uncertainty: 0.01, digits: 2 },
  { name: "crankpin", positions: ["across", "along"], nominal: 39.98, lower: 39.96, upper: 40, uncertainty: 0.002, digits: 3 },
];

/** Value or cells put in place of the ordinary reading: engine/cylinder/characteristic/position. */
export const PLANTED: Readonly<Record<string, Partial<Record<"value" | "unit" | "uncertainty", string>>>> = {
  "A/2/bore/top thrust": { value: "73.095" },
  "A/3/bore/top thrust": { value: "73.08", uncertainty: "" },
  "A/1/bore/bottom pin": { value: "73.079" },
  "B/1/bore/middle pin": { value: "7.302" },
  "B/2/bore/top pin": { value: "2.8752" },
  "B/3/bore/middle thrust": { value: "37.025" },
  "A/2/skirt/90 degrees to pin": { value: "72,98" },
  "B/2/ring end gap/second ring": { value: "" },
  "B/3/crankpin/across": { value: "93.98" },
  "A/3/crankpin/along": { unit: "in" },
  "B/1/inlet valve clearance/valve 2": { value: "tight" },
};

/** Small even wear that repeats: invented, and the same every time. */
function offset(index: number, step: number): number {
  return ((index * 7) % 5) * step;
}

export function readingsCsv(): string {
  const lines: string[][] = [HEADER];
  let index = 0;
  for (const engine of ["A", "B"]) {
    for (const cylinder of ["1", "2", "3"]) {
      for (const { name, positions, nominal, lower, upper, uncertainty, digits } of CHARACTERISTICS) {
        for (const position of positions) {
          const value = (nominal + offset(index++, digits === 3 ? 0.002 : 0.01)).toFixed(digits);
          const row = { value, unit: "mm", uncertainty: String(uncertainty), ...PLANTED[`${engine}/${cylinder}/${name}/${position}`] };
          lines.push([engine, cylinder, name, position, row.value, String(lower), String(upper), row.unit, row.uncertainty]);
        }
      }
    }
  }
  return `${lines.map((cells) => cells.map(quoted).join(",")).join("\r\n")}\r\n`;
}

const quoted = (cell: string): string => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
