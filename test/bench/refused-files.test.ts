import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { root } from "../../src/tools/paths.ts";
import { sparseFile } from "../helpers/sparse.ts";
import { atStand } from "./stand.ts";

const SAMPLE = new Uint8Array(readFileSync(join(root, "samples", "build-sheet.xlsx")));

const at = atStand("one page");

beforeAll(() => at.page.type("C4", "73.031"));

/** The open workbook with what was typed into it is still there, and the message goes. */
async function staysOpen(): Promise<void> {
  expect(await at.page.page.locator("#book").textContent()).toBe("build-sheet.xlsx");
  expect([await at.page.value("Bores!C4"), await at.page.page.locator("#unsaved").isVisible()]).toEqual([73.031, true]);
  await at.page.page.getByRole("button", { name: "Close" }).click();
  expect(await at.page.message()).toBe("");
}

describe("a file that cannot be opened is refused in a sentence, and the open workbook stays", () => {
  const truncated = SAMPLE.subarray(0, SAMPLE.length / 2);
  const bomb = zipSync({ "[Content_Types].xml": strToU8("<Types/>"), "xl/worksheets/sheet1.xml": new Uint8Array(60_000_000) });
  const noSheets = zipSync({ "hello.txt": strToU8("hello") });
  test.each([
    ["notes.xlsx", strToU8("cylinder;bore\n1;73,02\n"), /^notes\.xlsx is a text file, not a workbook: .*\.csv\.$/],
    ["half.xlsx", truncated, /^half\.xlsx is cut short or damaged: .*\.$/],
    ["empty.xlsx", new Uint8Array(0), /^empty\.xlsx is empty\.$/],
    ["archive.xlsx", noSheets, /^archive\.xlsx is a zip archive without a workbook in it\.$/],
    ["large.xlsx", bomb, /^large\.xlsx holds a part .* zip bomb\.$/],
    [
      "secret.xlsx",
      Buffer.concat([Buffer.from("d0cf11e0a1b11ae1", "hex"), Buffer.alloc(512), Buffer.from("EncryptedPackage\0", "utf16le")]),
      /protected by a password/,
    ],
  ])(
    "%s",
    async (name, bytes, sentence) => {
      await at.page.give(name, bytes as Uint8Array);
      await at.page.page.locator("#message").waitFor();
      expect(await at.page.message()).toMatch(sentence);
      await staysOpen();
    },
    60_000,
  );
});

test("a file too large to be taken in is refused by its size, before any of it is read", async () => {
  await at.page.page.setInputFiles("#file", sparseFile("large.xlsx", 2.5e9));
  await at.page.page.locator("#message").waitFor();
  expect(await at.page.message()).toBe("large.xlsx is too large: 2,500 MB, and at most 200 MB are read.");
  await staysOpen();
}, 60_000);
