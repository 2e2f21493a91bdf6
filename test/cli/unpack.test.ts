import { deflateSync } from "fflate";
import { unpack } from "../../src/cli/unpack.ts";
import { UnreadableFile } from "../../src/hosts/file.ts";
import { FILE_LIMITS } from "../../src/xlsx/file-limits.ts";
import { readXlsx } from "../../src/xlsx/read/read.ts";
import { workbookBytes } from "../xlsx/workbook-bytes.ts";

const content = new Uint8Array(300_000).map((_, i) => (i * 7919) % 251);

test.each([0, 1, 63, 64, 65_536, 300_000])("%i bytes come out as they went in", (size) => {
  expect(new Uint8Array(unpack(deflateSync(content.subarray(0, size)), size))).toEqual(content.subarray(0, size));
});

test("more than the archive says is not unpacked", () => {
  const bomb = deflateSync(new Uint8Array(50_000_000));
  expect(() => unpack(bomb, 1000)).toThrow(/larger than 1000/);
  expect(() => unpack(deflateSync(content), content.length - 1)).toThrow();
  expect(() => unpack(deflateSync(content.subarray(0, 2)), 0)).toThrow();
});

test("a part that is cut short or damaged makes the file unreadable, in the same words as elsewhere", () => {
  const bytes = workbookBytes({ sheets: [{ name: "Bores", cells: [[73.01, "Bore ⌀ 73", { f: "A1+1" }]] }] });
  const damage = (at: number): string[] =>
    [undefined, unpack].map((way) => {
      const damaged = bytes.slice();
      damaged[at]! ^= 255;
      try {
        return JSON.stringify(readXlsx(damaged, FILE_LIMITS, way));
      } catch (reason) {
        expect(reason).toBeInstanceOf(UnreadableFile);
        return (reason as UnreadableFile).reason;
      }
    });
  for (let at = 0; at < bytes.length; at += 3) {
    const [plainly, quickly] = damage(at);
    expect(quickly).toBe(plainly);
  }
});
