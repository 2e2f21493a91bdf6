import { columns, grouped } from "../columns.ts";
import { thermalImpedance } from "../gauge-studies.ts";
import { block, list, stack } from "./check.ts";

/** Formulas made from the data sets beside this folder; SOURCES.md says where each comes from. */

const first = (file: string, heading: RegExp): number[] => columns(file, heading).map(([reading]) => reading!);

/** NIST StRD, one number a line below `Data:`. */
export const strd = (name: string): number[] => first(`nist-strd/${name}.dat`, /^\s*Data:/);

/** Readings of a handbook file by the group in its second column. */
const handbook = (name: string): number[][] => grouped(columns(`nist-handbook/${name}.DAT`, /^-{5,}/).map(([reading, group]) => [group!, reading!] as const));

const rings = columns("ring-diameters.txt", /^diameter/);

/** The samples from `from` to `to`, one a row. */
const ringSamples = (from: number, to: number): number[][] =>
  grouped(rings.filter(([, sample]) => sample! >= from && sample! <= to).map(([diameter, sample]) => [sample!, diameter!] as const));

export const SUMMARY_OF_RINGS = `=HATCH.BORESUMMARY(${stack(ringSamples(1, 25).flat())})`;

export const HEAT_FLOW = `=HATCH.UNCERTAINTY(${list(first("nist-handbook/ZARR13.DAT", /^-{5,}/))}, 0.000001)`;

export const CARS = `=HATCH.COMPAREGROUPS(${handbook("AUTO83B").map(list).join(", ")})`;

const norris = columns("nist-strd/Norris.dat", /^Data: /);
export const NORRIS = `=HATCH.WEARRATE(${stack(norris.map(([, x]) => x!))}, ${stack(norris.map(([y]) => y!))})`;

/** A study of one operator is a one-way analysis of variance: every group is a part, every reading a repeat. */
const oneWay = (groups: readonly (readonly number[])[]): string => `=HATCH.GAUGESTUDY(${stack(groups.map((_, i) => i + 1))}, "A", ${block(groups)})`;

export const oneWayStrd = (name: string): string =>
  oneWay(grouped(columns(`nist-strd/${name}.dat`, /^Data: /).map(([group, reading]) => [group!, reading!] as const)));

export const GEARS = oneWay(handbook("GEAR"));

export const THERMAL_IMPEDANCE = `=HATCH.GAUGESTUDY(${stack(thermalImpedance.map((_, i) => i + 1))}, {"A","A","A","B","B","B","C","C","C"}, ${block(thermalImpedance)}, 40)`;
