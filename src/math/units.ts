import { createUnitClass } from "mathjs";

declare module "mathjs" {
  /** Makes the unit class from the arithmetic it is to use. The package exports it, its types leave it out. */
  export function createUnitClass<T>(dependencies: Record<string, unknown>): T;
}

interface Unit {
  equalBase(other: Unit): boolean;
  toNumber(unit: string): number;
}

/** What the library asks for and lengths never need: other kinds of number, and units whose zero lies elsewhere, as those of temperature. */
const unsupported = class {};

/**
 * Units of measure over plain numbers. The package's ready-made units (`create` with `unitDependencies`) bring complex numbers,
 * fractions and big numbers along: 58 KB gz more in every bundle.
 */
const UnitOf: new (value: number | null, name: string) => Unit = createUnitClass({
  config: {},
  addScalar: unsupported,
  subtractScalar: unsupported,
  multiplyScalar: (a: number, b: number) => a * b,
  divideScalar: (a: number, b: number) => a / b,
  pow: Math.pow,
  abs: Math.abs,
  fix: Math.trunc,
  round: Math.round,
  equal: Object.is,
  isNumeric: Number.isFinite,
  format: String,
  number: Number,
  Complex: unsupported,
  BigNumber: unsupported,
  Fraction: unsupported,
});

const METRE = new UnitOf(1, "m");

const factors = new Map<string, number>();

/** How many of `to` one `from` is, where both are names of units of length; undefined where `from` is none. */
export function lengthFactor(from: string, to: string): number | undefined {
  const pair = `${from} ${to}`;
  const known = factors.get(pair) ?? factorOf(from, to);
  if (known !== undefined) factors.set(pair, known);
  return known;
}

function factorOf(from: string, to: string): number | undefined {
  try {
    const unit = new UnitOf(1, from);
    return unit.equalBase(METRE) ? unit.toNumber(to) : undefined;
  } catch {
    // The library throws on a name it does not know, which here is an answer.
    return undefined;
  }
}
