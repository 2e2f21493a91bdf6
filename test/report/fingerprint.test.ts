import { createHash } from "node:crypto";
import { contentsText, fingerprintOf } from "../../src/report/fingerprint.ts";
import { workbook } from "../buildsheet/workbook.ts";

const digest = (bytes: Uint8Array<ArrayBuffer>) => crypto.subtle.digest("SHA-256", bytes);
const book = (value: number, formula = "=A1*2") => workbook({ Sheet1: [[value, formula], [null], ["end"]] });

// FIPS 180-2, appendix B.1: the digest of "abc" (from memory); Node's own library says the same.
test("a file's fingerprint is its SHA-256", async () => {
  const bytes = new TextEncoder().encode("abc");
  expect(await fingerprintOf(bytes, digest)).toEqual({ sha256: "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", of: "file" });
  expect(createHash("sha256").update(bytes).digest("hex")).toBe((await fingerprintOf(bytes, digest)).sha256);
});

test("where there is no file, what stands in the cells counts: the same again for the same, another for another", async () => {
  const of = async (value: number, formula?: string) => (await fingerprintOf(book(value, formula), digest)).sha256;
  const first = await of(73.02);
  expect(first).toMatch(/^[0-9a-f]{64}$/);
  expect(await of(73.02)).toBe(first);
  expect(await of(73.03)).not.toBe(first);
  expect(await of(73.02, "=A1+A1")).not.toBe(first);
  expect((await fingerprintOf(book(1), digest)).of).toBe("contents");
});

test("cells that hold nothing, and how far the host says that a sheet reaches, count for nothing", () => {
  const sheet = { name: "S", row: 0, column: 0, values: [[1, null]], formulas: [[null, null]] };
  const wider = {
    name: "S",
    row: 0,
    column: 0,
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
  expect(contentsText({ sheets: [wider] })).toBe(contentsText({ sheets: [sheet] }));
  expect(contentsText({ sheets: [inset] })).not.toBe(contentsText({ sheets: [sheet] }));
});
