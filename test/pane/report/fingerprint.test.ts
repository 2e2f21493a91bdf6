import { createHash } from "node:crypto";
import { fingerprintOf } from "../../../src/pane/report/report-view.tsx";
import { workbook } from "../../check/workbook.ts";

const book = (value: number, formula = "=A1*2") => workbook({ Sheet1: [[value, formula], [null], ["end"]] });
const sha256 = async (...asked: Parameters<typeof fingerprintOf>) => (await fingerprintOf(...asked))!.sha256;

// What is hashed is written out by hand, the hash is from Node's own library (OpenSSL).
test("is the SHA-256 of the sheets' names and of their cells with their places, values and formulas", async () => {
  const sheets = [{ name: "Bores", row: 2, column: 1, values: [[73.02, null, "x"]], formulas: [[null, null, '=UPPER("x")']] }];
  const text = '[["Bores",[[2,1,73.02,null],[2,3,"x","=UPPER(\\"x\\")"]]]]';
  expect(await fingerprintOf({ sheets })).toEqual({ of: "contents", sha256: createHash("sha256").update(text).digest("hex") });
});

test("is the same again for the same contents, another for another value or formula", async () => {
  const first = await sha256(book(73.02));
  expect(await sha256(book(73.02))).toBe(first);
  expect(await sha256(book(73.03))).not.toBe(first);
  expect(await sha256(book(73.02, "=A1+A1"))).not.toBe(first);
});

test("does not count cells that hold nothing, nor how far the host says that a sheet reaches", async () => {
  const sheet = { name: "S", row: 0, column: 0, values: [[1, null]], formulas: [[null, null]] };
  const wider = {
    ...sheet,
    values: [
      [1, "", undefined],
      [null, null, null],
    ],
    formulas: [
      [null, null, null],
      [null, null, null],
    ],
  };
  const inset = { name: "S", row: 1, column: 1, values: [[1]], formulas: [[null]] };
  expect(await sha256({ sheets: [wider] })).toBe(await sha256({ sheets: [sheet] }));
  expect(await sha256({ sheets: [inset] })).not.toBe(await sha256({ sheets: [sheet] }));
});

test("is left out where the page is lent no hash", async () => {
  const contents = book(1);
  const lent = Object.getOwnPropertyDescriptor(globalThis, "crypto")!;
  Object.defineProperty(globalThis, "crypto", { value: {}, configurable: true });
  try {
    expect(await fingerprintOf(contents)).toBeUndefined();
  } finally {
    Object.defineProperty(globalThis, "crypto", lent);
  }
});
