import { broadcast } from "../../src/core/broadcast.ts";
import type { Argument, Cell } from "../../src/core/cell.ts";
import { blankHelp } from "../../src/core/define.ts";
import { Fault } from "../../src/core/fault.ts";
import { specByName, specs } from "../../src/functions/index.ts";
import { argumentsOf } from "./scalar-example.ts";

/** The argument with one of its cells replaced. */
const withCell = (given: Argument, index: number, cell: Cell): Argument =>
  Array.isArray(given) ? given.map((line, r) => line.map((one, c) => (r * line.length + c === index ? cell : one))) : cell;

const sizeOf = (given: Argument): number => (Array.isArray(given) ? given.length * given[0]!.length : 1);

const outcome = (spec: (typeof specs)[number], args: readonly Argument[]): string => {
  const came = broadcast(spec, args);
  return came instanceof Fault ? "a fault" : JSON.stringify(came);
};

describe.each(specs.map((spec) => [spec.name, spec] as const))("%s", (_, spec) => {
  test("says of each input whether a blank cell handed over as 0 gives something else", () => {
    for (const { formula } of spec.examples) {
      const args = argumentsOf(formula);
      for (const [i, given] of args.entries()) {
        const { name, param } = spec.inputs[i]!;
        if (given === undefined || param.zeroPasses) continue;
        for (let cell = 0; cell < sizeOf(given); cell++) {
          const [blank, zero] = [null, 0].map((put) => outcome(spec, args.with(i, withCell(given, cell, put))));
          // A fault names the 0, and is no number.
          if (zero !== "a fault" && !zero!.includes("check: ")) expect([name, formula, zero]).toEqual([name, formula, blank]);
        }
      }
    }
  });
});

test("help names the inputs in which a blank could pass for a reading, and the remedy", () => {
  expect(blankHelp(specByName.get("LEAKDOWN")!)).toBe(
    'A 0 counts as typed in held, and some versions of Excel, and LibreOffice, hand a blank cell over as 0: where that cell may be blank, write IF(C4="","",C4) in place of C4.',
  );
  expect(blankHelp(specByName.get("CLEARANCE")!)).toBeUndefined();
});
