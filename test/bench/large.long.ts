import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { crosshatch, jsonLines } from "../cli/run.ts";
import { press } from "../long-use/drive.ts";
import { LARGE, useLarge } from "../long-use/large.ts";
import { atStand } from "./stand.ts";

import.meta.jest.setTimeout(300_000);

/** Rows of a sheet of so many whose reading, 73 and so many thousandths as the row's number leaves over by 90, is above 73.08. */
const over = (rows: number): number => Array.from({ length: rows }, (_, i) => (i + 1) % 90).filter((thousandths) => thousandths > 80).length;

const CASES: [workbook: string, rows: number, findings: number][] = [
  ["16 cylinders", 4 * 16 * 12, 4 * over(16 * 12)],
  ["10,000 rows", 10_000, over(10_000)],
  ["100 sheets", 100 * 60, 100 * over(60)],
];

/** Without what groups the digits of large numbers. */
const plain = (text: string | null): string => text!.replace(/(?<=\d)[\s,](?=\d{3})/g, "");

test("the workbooks are those that long use opens", () => {
  expect(Object.keys(LARGE)).toEqual(CASES.map(([workbook]) => workbook));
});

test("on the command line every row of them is checked, on one thread and on several", async () => {
  const folder = mkdtempSync(join(tmpdir(), "crosshatch-large-"));
  for (const [workbook] of CASES) writeFileSync(join(folder, `${workbook}.xlsx`), LARGE[workbook]!());
  const files = CASES.map(([workbook]) => `${workbook}.xlsx`);
  const runs = await Promise.all(["1", "2"].map((threads) => crosshatch(["check", "--json", "--threads", threads, ...files], { cwd: folder })));
  for (const { code, out } of runs) {
    const lines = jsonLines(out);
    const rows = CASES.reduce((sum, [, all]) => sum + all, 0);
    expect([code, lines.at(-1)]).toEqual([1, expect.objectContaining({ rowsIn: rows, checked: rows, refused: 0, unread: [] })]);
    const found = lines.slice(0, -1);
    expect(CASES.map(([workbook]) => found.filter(({ file, verdict }) => file === `${workbook}.xlsx` && verdict === "over").length)).toEqual(
      CASES.map(([, , findings]) => findings),
    );
  }
  expect(runs[1]!.out).toBe(runs[0]!.out);
  rmSync(folder, { recursive: true });
});

describe("on the bench and in its pane", () => {
  const at = atStand("one page");

  test.each(CASES.toSorted(([, a], [, b]) => a - b))("%s are opened, checked to the last row and scrolled through", async (workbook, rows, findings) => {
    await useLarge(at.page, [workbook]);
    expect(plain(await at.page.pane.locator(".counts").textContent())).toContain(`${rows} of ${rows} rows checked`);
    expect(plain(await at.page.pane.locator("#view-check h2").first().textContent())).toBe(findings === 0 ? "No findings" : `${findings} findings`);
    expect(at.page.trouble).toEqual([]);
  });

  test("what is then typed into the last row of the largest is checked", async () => {
    await at.page.page.evaluate(() => {
      const { model } = window.crosshatchBench!;
      model.dispatch("UPDATE_CELL", { sheetId: model.getters.getSheetIds()[0]!, col: 1, row: 10_000, content: "72.9" });
    });
    await press(at.page);
    expect(await at.page.value("Readings!E10001")).toBe("under");
  });
});
