import type { Argument, Cell } from "../../src/core/cell.ts";
import type { Spec } from "../../src/core/define.ts";
import type { Param } from "../../src/core/param.ts";
import { specs } from "../../src/functions/index.ts";
import { argumentsOf } from "../functions/scalar-example.ts";
import type { Given, Held } from "./held.ts";
import { ParityRandom } from "./random.ts";
import { anything, fitting } from "./values.ts";

/** One call: a function and what it is given. */
export interface Input {
  spec: Spec;
  given: Given[];
}

type Shape = readonly [rows: number, columns: number];

const EXAMPLES = new Map(specs.map((spec) => [spec, spec.examples.map(({ formula }) => argumentsOf(formula))]));

const rowsOf = (argument: Argument): Cell[][] => (Array.isArray(argument) ? argument : [[argument]]);

function anyShape(random: ParityRandom, isLarge: number): Shape {
  const small = () => random.whole(1, 5);
  // Blocks from 64 elements on are calculated in a way of their own.
  const large = random.pick<Shape>([
    [random.whole(60, 140), 1],
    [random.whole(30, 70), 2],
    [1, random.whole(60, 80)],
  ]);
  return random.pick<Shape>([[1, 1], [small(), 1], [1, small()], [small(), small()], [small(), small()], random.chance(isLarge) ? large : [2, 2]]);
}

/** How far a call strays from its example. */
interface Manner {
  /** Every argument keeps the shape that it has there, and numbers stay close. */
  tame: boolean;
  /** Share of cells that may hold anything. */
  wild: number;
  /** The shape of arguments that do not keep their own. */
  common: Shape;
  /** Share of other shapes that are large. */
  isLarge: number;
}

/** One argument near that of an example: as it stands, in another shape, or with cells of any kind among it. */
function argument(random: ParityRandom, param: Param<unknown>, base: Argument, { tame, wild, common, isLarge }: Manner): Given {
  if (random.chance(param.isOptional ? 0.3 : tame ? 0 : 0.02)) return null;
  const example = rowsOf(base);
  const kept: Shape = [example.length, example[0]?.length ?? 1];
  const [rows, columns] = tame || random.chance(0.5) ? kept : random.chance(0.7) ? common : anyShape(random, isLarge);
  const cell = (row: number, column: number): Held =>
    random.chance(wild)
      ? anything(random, param)
      : fitting(random, param, example[row % example.length]?.[column % kept[1]] ?? (param.fallback as Cell) ?? null, tame);
  const made = Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (_, column) => cell(row, column)));
  const isWritable = rows * columns <= 12 && made.flat().every(({ value, typed }) => typed === undefined && isLiteral(value));
  return { as: isWritable && random.chance(0.4) ? "literal" : "cells", rows: made };
}

/** Values that a formula can hold in every sheet program's own spelling. */
const isLiteral = (value: Cell): boolean => {
  if (typeof value === "number") return /^\d{1,9}(?:\.\d{1,6})?$/.test(String(value));
  if (typeof value === "string") return /^[\w .]{1,40}$/.test(value);
  return typeof value === "boolean";
};

function input(random: ParityRandom, spec: Spec): Input {
  const example = random.pick(EXAMPLES.get(spec)!);
  const tame = random.chance(0.3);
  // What a table takes as a whole is small in an engine, and hosts refuse to work out very large ones.
  const isLarge = spec.returns.kind === "table" ? 0 : 0.15;
  const common = anyShape(random, isLarge);
  // Most calls have few or no cells that do not fit, so that most give numbers.
  const manner = { tame, wild: tame ? 0 : random.pick([0, 0, 0.02, 0.1, 0.5]), common, isLarge };
  const given = spec.inputs.map(({ param }, i) => argument(random, param, example[i], manner));
  const count = tame || random.chance(0.8) ? given.length : random.whole(0, given.length);
  const cut = given.slice(0, count);
  if (random.chance(0.01)) cut.push({ as: "cells", rows: [[{ value: 1 }]] });
  return { spec, given: cut };
}

/** So many calls, each function in its turn. The same seed gives the same ones. */
export function* inputs(count: number, seed: number): Generator<Input> {
  const random = new ParityRandom(seed);
  for (let i = 0; i < count; i++) yield input(random, specs[i % specs.length]!);
}
