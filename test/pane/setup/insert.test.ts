import { openWorkbook } from "../../../src/hosts/file.ts";
import { memoryHost } from "../../../src/hosts/memory.ts";
import { insert, insertSample } from "../../../src/pane/setup/insert.ts";
import { buildSheetSpec } from "../../../src/setup/build-sheet.ts";
import { sampleBuildSheet } from "../../../src/setup/sample.ts";
import { HostRefusal } from "../../../src/workbook/port.ts";
import { cellContents } from "../../../src/workbook/sheet-spec.ts";
import { writeXlsx } from "../../../src/xlsx/write/workbook.ts";
import { workbookBytes } from "../../xlsx/workbook-bytes.ts";

const CHOICES = { cylinders: 2, heights: 2, axes: 2, valves: 2, unit: "mm", secondReadings: false, without: [] } as const;
const emptyFile = () => openWorkbook(workbookBytes({ sheets: [{ name: "Sheet1", cells: [] }] }), "empty.xlsx");

test("a sample put in through the port comes to what the same sample in a file of its own does", async () => {
  const host = await emptyFile();
  await insertSample(host);
  const file = await openWorkbook(writeXlsx(sampleBuildSheet()), "sample.xlsx");
  expect((await host.read()).sheets.slice(1)).toEqual((await file.read()).sheets);
  expect(host.notes()).toEqual([]);
});

test("every cell of the description is written, and cells to type into are left alone", () => {
  for (const sheet of buildSheetSpec({ ...CHOICES }).sheets) {
    const block = cellContents(sheet);
    expect(block.flat().filter((content) => content !== null)).toHaveLength(sheet.cells.filter(({ content }) => content !== "").length);
    for (const { row, column, content } of sheet.cells) expect(block[row]?.[column] ?? null).toBe(content === "" ? null : content);
  }
});

test("where a sheet has one of the names nothing is added or written", async () => {
  const host = memoryHost([{ name: "limits", cells: [["my own"]] }]);
  const before = await host.read();
  await expect(insert(host, buildSheetSpec({ ...CHOICES }))).rejects.toThrow(HostRefusal);
  expect(await host.read()).toEqual(before);
});

test("sheets that are added but cannot be brought into view are said to be there", async () => {
  const host = memoryHost([{ name: "Sheet1", cells: [] }]);
  const busy = { ...host, select: () => Promise.reject(new HostRefusal("A cell is being typed into.")) };
  expect(await insert(busy, buildSheetSpec({ ...CHOICES }))).toMatch(/^22 new sheets: .* They could not be brought into view: A cell is being typed into\.$/);
  expect((await host.read()).sheets).toHaveLength(23);
});

test("a workbook that holds something gets no sample", async () => {
  const host = memoryHost([{ name: "Bores", cells: [[73.02]] }]);
  expect(await insertSample(host)).toContain("no sample was put in");
  expect((await host.read()).sheets).toHaveLength(1);
});
