import { memoryHost } from "../../src/hosts/memory.ts";
import { isUnread, loadMapping, type MappedRange, type Mapping, NO_MAPPING, readMapping, storedLayout, storeMapping } from "../../src/layout/mapping.ts";
import { LAYOUT_KEY } from "../../src/workbook/storage.ts";

const RANGE: MappedRange = {
  sheet: "Bores",
  row: 3,
  column: 1,
  rows: 3,
  columns: 6,
  rowHeads: [{ at: 0, tells: ["cylinder"], merged: false }],
  columnHeads: [{ at: 2, tells: ["height", "axis", "position"], merged: true }],
  fixed: { engine: "A" },
  otherwise: { characteristic: "bore", unit: "mm" },
  records: "cell",
  without: { rows: [], columns: [] },
  grows: true,
  signature: [[-1, 0, "top thrust"]],
};
const MAPPING: Mapping = { version: 1, ranges: [RANGE] };

test("what is kept in a workbook is recalled as it was", async () => {
  const host = memoryHost([{ name: "Bores", cells: [] }]);
  expect(await loadMapping(host)).toBeNull();
  expect(await storedLayout(host)).toEqual({ mapping: undefined, notes: [] });
  await storeMapping(host, MAPPING);
  expect(await loadMapping(host)).toEqual(MAPPING);
  expect(await storedLayout(host)).toEqual({ mapping: MAPPING, notes: [] });
  await storeMapping(host, NO_MAPPING);
  expect(await loadMapping(host)).toBeNull();
});

test("what is no layout is refused with a sentence, and its use is a note", async () => {
  const damaged = "the saved layout of this workbook is damaged";
  const unread = (text: string): string => {
    const read = readMapping(text);
    return isUnread(read) ? read.unread : "";
  };
  expect(unread("{")).toBe(`${damaged}: set it up again`);
  expect(unread("[]")).toBe(`${damaged}: set it up again`);
  expect(unread(JSON.stringify({ version: 2, ranges: [] }))).toBe("the saved layout of this workbook was made by a newer Crosshatch");
  expect(unread(JSON.stringify({ version: 1, ranges: [{ ...RANGE, rows: 0 }] }))).toBe(`${damaged} (ranges.0.rows): set it up again`);
  expect(unread(JSON.stringify({ version: 1, ranges: [{ ...RANGE, row: 1e9 }] }))).toBe(`${damaged} (ranges.0.row): set it up again`);
  expect(unread(JSON.stringify({ version: 1, ranges: [{ ...RANGE, rowHeads: [{ at: 0, tells: ["colour"] }] }] }))).toBe(
    `${damaged} (ranges.0.rowHeads.0.tells.0): set it up again`,
  );
  const host = memoryHost([{ name: "Bores", cells: [] }]);
  await host.storeText(LAYOUT_KEY, "{");
  expect(await storedLayout(host)).toEqual({ mapping: undefined, notes: [`${damaged}: set it up again`] });
});

test("a layout that is none is not kept", async () => {
  const host = memoryHost([{ name: "Bores", cells: [] }]);
  await expect(storeMapping(host, { version: 1, ranges: [{ ...RANGE, columns: -1 }] })).rejects.toThrow();
  expect(await loadMapping(host)).toBeNull();
});
