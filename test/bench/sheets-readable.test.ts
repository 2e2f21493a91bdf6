import { readFileSync } from "node:fs";
import { join } from "node:path";
import { sampleBuildSheet } from "../../src/setup/sample.ts";
import { root } from "../../src/tools/paths.ts";
import { writeXlsx } from "../../src/xlsx/write/workbook.ts";
import { described } from "../setup/made.ts";
import { atStand } from "./stand.ts";

import.meta.jest.setTimeout(120_000);

const at = atStand("one page");

/** What of the words on the sheets is cut off, as the grid measures it in the letters of this machine. */
const cutOff = (): Promise<string[]> =>
  at.page.page.evaluate(() => {
    const { getters } = window.crosshatchBench!.model;
    const all = (size: number, from = 0) => Array.from({ length: size - from }, (_, i) => from + i);
    /** Room of a cell that its words do not get, on both sides (the grid's own), and of a button in a heading. */
    const [EDGE, BUTTON] = [4, 20];
    const said: string[] = [];
    for (const sheetId of getters.getSheetIds()) {
      const columns = getters.getNumberCols(sheetId);
      const buttons = getters.getCoreTables(sheetId).flatMap(({ config, range: { zone } }) => (config.hasFilters ? [zone] : []));
      for (const row of all(getters.getNumberRows(sheetId)))
        for (const col of all(columns)) {
          const position = { sheetId, col, row };
          const zone = getters.getMerge(position) ?? { left: col, right: col, top: row, bottom: row };
          const { type } = getters.getEvaluatedCell(position);
          if (type !== "text" || zone.left !== col || zone.top !== row) continue;
          const text = getters.getCellText(position, {});
          const style = getters.getCellStyle(position);
          const has = buttons.some(({ left, right, top }) => top === row && left <= col && col <= right) ? BUTTON : 0;
          const wide = all(zone.right + 1, zone.left).reduce((sum, one) => sum + getters.getColSize(sheetId, one), 0);
          const high = all(zone.bottom + 1, zone.top).reduce((sum, one) => sum + getters.getRowSize(sheetId, one), 0);
          const tell = (what: string) => said.push(`${getters.getSheetName(sheetId)} ${getters.zoneToXC(sheetId, zone)} ${what}: ${text}`);
          if (style.wrapping === "wrap") {
            const lines = getters.getCellMultiLineText(position, { maxWidth: 0, wrapWidth: wide - 2 * EDGE - has });
            // A line is as high as its letters, 4/3 pixels a point, and 4 pixels to the next one.
            const needed = lines.length * (Math.round(((style.fontSize ?? 10) * 4) / 3) + EDGE) - EDGE;
            if (lines.join(" ") !== text) tell("is broken within a word");
            if (needed + EDGE > high) tell(`needs ${needed + EDGE} of ${high} in height`);
            continue;
          }
          // Words without a frame go on over blank cells.
          const beyond = all(columns, zone.right + 1).findIndex((one) => getters.getEvaluatedCell({ sheetId, col: one, row }).type !== "empty");
          const free = getters.getCellComputedBorder(position)?.right ? 0 : beyond < 0 ? columns - zone.right - 1 : beyond;
          const room = all(zone.right + 1 + free, zone.right + 1).reduce((sum, one) => sum + getters.getColSize(sheetId, one), wide);
          const needed = Math.ceil(getters.getTextWidth(text, style) + EDGE);
          if (needed > room) tell(`needs ${needed} of ${room}`);
        }
    }
    return said;
  });

const NEW = (["mm", "in"] as const).flatMap((unit) => [3, 8].map((cylinders) => ({ unit, cylinders })));

test.each(NEW)("of the sheets of $cylinders cylinders in $unit no heading, note, name or caution is cut off", async ({ unit, cylinders }) => {
  const name = `${cylinders} ${unit}.xlsx`;
  await at.page.give(name, writeXlsx(described({ unit, cylinders, heights: 5, axes: 4, valves: 5, secondReadings: true })));
  await at.page.page.locator("#book", { hasText: name }).waitFor();
  expect(await cutOff()).toEqual([]);
});

test("of a filled sheet no verdict and no sentence is cut off either", async () => {
  await at.page.give("sample.xlsx", writeXlsx(sampleBuildSheet()));
  await at.page.page.locator("#book", { hasText: "sample.xlsx" }).waitFor();
  expect(await cutOff()).toEqual([]);
});

test("of the sample that the bench starts on nothing is cut off", async () => {
  await at.page.give("start.xlsx", readFileSync(join(root, "samples", "build-sheet.xlsx")));
  await at.page.page.locator("#book", { hasText: "start.xlsx" }).waitFor();
  expect(await cutOff()).toEqual([]);
});
