import { broadcast } from "../../src/core/broadcast.ts";
import type { Fault } from "../../src/core/fault.ts";
import { checkText } from "../../src/core/sentences.ts";
import { specByName } from "../../src/functions/index.ts";

import { answerFrame, answerTo, requestIn } from "../../src/libreoffice/frames.ts";

const number = (value: number): Buffer => {
  const bytes = Buffer.alloc(9, 1);
  bytes.writeDoubleLE(value, 1);
  return bytes;
};
const text = (value: string): Buffer => {
  const bytes = Buffer.from(value);
  return Buffer.concat([Buffer.from([2, bytes.length, 0, 0, 0]), bytes]);
};
const block = (rows: number, columns: number, ...cells: Buffer[]): Buffer => Buffer.concat([Buffer.from([3, rows, 0, 0, 0, columns, 0, 0, 0]), ...cells]);
const request = (name: string, ...args: Buffer[]): Buffer =>
  Buffer.concat([Buffer.from([name.length]), Buffer.from(name), Buffer.from([args.length]), ...args]);

test("a request of every kind of argument is read as it was written", () => {
  const frame = request("TAPER", number(73.01), text("Bohrung ⌀"), Buffer.from([0]), block(2, 1, number(-0.5), text("")));
  expect(requestIn(frame)).toEqual({ name: "TAPER", args: [73.01, "Bohrung ⌀", undefined, [[-0.5], [""]]] });
});

test("an answer says its length, its rows and columns, and fills up a shorter row with blanks, never with 0", () => {
  const frame = answerFrame([["ø", 1.5], [2]]);
  expect(frame.readUInt32LE(0)).toBe(frame.length - 4);
  expect([frame.readUInt32LE(4), frame.readUInt32LE(8)]).toEqual([2, 2]);
  expect(frame.subarray(12)).toEqual(Buffer.concat([text("ø"), number(1.5), number(2), text("")]));
});

describe("a call as the office program hands it over", () => {
  test("gives one row of one cell for one value", () => expect(answerTo({ name: "CLEARANCE", args: [73.04, 73] })).toEqual([[0.04]]));

  test("gives a block where a block is asked for", () =>
    expect(answerTo({ name: "CLEARANCE", args: [[[73.04], [""], [73.05]], 73] })).toEqual([[0.04], [""], [0.05]]));

  test("a fault is text, alone as in a block, without the name of the function", () => {
    const fault = broadcast(specByName.get("PISTONCLEARANCE")!, [73.02, 73.06]) as Fault;
    expect(answerTo({ name: "PISTONCLEARANCE", args: [73.02, 73.06] })).toEqual([[checkText(fault)]]);
    expect(checkText(fault)).toBe("check: skirt 73.06 is larger than bore 73.02: are they swapped?");
  });

  test("what is left out at the end is not given, what is left out in between is blank", () => {
    expect(answerTo({ name: "VERDICT", args: [0.03, 0.02, 0.04, undefined, undefined] })).toEqual([["within"]]);
    expect(answerTo({ name: "CLEARANCE", args: [73.04, undefined] })).toEqual([["check: shaft is not given: it must be a length above 0"]]);
    expect(answerTo({ name: "VERDICT", args: [0.05, undefined, 0.04] })).toEqual([["over"]]);
  });

  test("a range of one cell is that cell, and one that is blank is a blank", () => {
    expect(answerTo({ name: "CLEARANCE", args: [[[73.04]], [[73]]] })).toEqual([[0.04]]);
    expect(answerTo({ name: "VERDICT", args: [[[""]], 0.02, 0.04] })).toEqual([[""]]);
  });

  test("a function that is not there is said so", () =>
    expect(answerTo({ name: "NOSUCH", args: [] })).toEqual([["check: there is no function NOSUCH in this version"]]));
});
