import { excelHost } from "../../../src/hosts/excel/host.ts";
import { isRefusal, type SheetHost } from "../../../src/workbook/port.ts";
import { storageXml } from "../../../src/workbook/storage.ts";
import { DOT } from "../contract-sheets.ts";
import { at } from "../look.ts";
import { DESCRIBED } from "../spec-sample.ts";
import { BOOK } from "../stage.ts";
import { ExcelBook } from "./book.ts";
import { type MockOptions, mockExcel } from "./mock.ts";
import { RichApiError } from "./mock-object.ts";

const B2 = at("Bores", 1, 1);
const ERROR = new RichApiError("GeneralException", "There was an internal error while processing the request.");

/** A workbook in which something is marked and kept already. */
async function prepared(): Promise<ExcelBook> {
  const book = new ExcelBook(BOOK);
  book.setLook(B2, { color: "#FFFF00", pattern: "Gray50", patternColor: "#000000" });
  book.type(at("Bores", 2, 1), "'=B2");
  const host = excelHost(mockExcel(book).run);
  await host.storeText("layout", "B2:C5");
  await host.mark([
    { cell: B2, tone: "outside" },
    { cell: at("Summary 2", 2, 2), tone: "near" },
  ]);
  return book;
}

/** All that a person would miss. */
const state = ({ sheets, called, parts }: ExcelBook) =>
  structuredClone({
    sheets: sheets.map(({ name, cells, looks, pictures }) => ({ name, cells: [...cells].sort(), looks: [...looks].sort(), pictures })),
    names: called.names ?? [],
    tables: called.tables ?? [],
    texts: parts.map(({ xml }) => xml).filter((xml) => xml !== storageXml(new Map())),
  });

const OPERATIONS: readonly [name: string, act: (host: SheetHost) => Promise<unknown>][] = [
  [
    "write",
    (host) =>
      host.write([
        {
          ...B2,
          cells: [
            [99, "=A1"],
            ["text", true],
          ],
        },
        { sheet: "Empty", row: 3, column: 1, cells: [["73,02"]] },
        { sheet: "Bores", row: 1, column: 0, cells: [[7, 8]] },
      ]),
  ],
  ["addSheets", (host) => host.addSheets(DESCRIBED)],
  ["insertPicture", (host) => host.insertPicture(at("Empty", 2, 2), DOT)],
  [
    "mark",
    (host) =>
      host.mark([
        { cell: B2, tone: "doubt" },
        { cell: at("Bores", 3, 1), tone: "outside" },
        { cell: at("Empty", 0, 0), tone: "fault" },
      ]),
  ],
  ["unmark", (host) => host.unmark()],
  ["keep", (host) => host.storeText("layout", "C5:D9")],
  ["keep of another text", (host) => host.storeText("report", "engine A")],
];

/** Runs the operation on a fresh workbook whose Excel fails; syncs are counted from the operation's own first. */
async function failing(
  act: (host: SheetHost) => Promise<unknown>,
  { sync, ...how }: { sync: number; done: number; andAfter?: boolean },
  options: MockOptions = {},
) {
  const book = await prepared();
  const before = state(book);
  const { run } = mockExcel(book, { ...options, failing: { sync: book.syncs + sync, error: ERROR, ...how } });
  const outcome = await act(excelHost(run)).then(
    () => "done",
    (error: unknown) => (isRefusal(error) ? error.message : error),
  );
  return { book, before, outcome };
}

async function syncsOf(act: (host: SheetHost) => Promise<unknown>): Promise<number> {
  const book = await prepared();
  const before = book.syncs;
  await act(excelHost(mockExcel(book).run));
  return book.syncs - before;
}

const STOPPED = "Excel could not do this: There was an internal error while processing the request. (GeneralException)";
/** How many commands of the failing sync are done before it fails; more than any has. */
const SOME = [...Array.from({ length: 60 }, (_, done) => done), 90, 150, 400];

describe.each(OPERATIONS)("%s that fails", (_, act) => {
  test("at any sync, after any of its parts, leaves the workbook as it was and says so, and works when tried again", async () => {
    const syncs = await syncsOf(act);
    expect(syncs).toBeGreaterThan(1);
    for (let sync = 1; sync <= syncs; sync++) {
      // What only looks has no half.
      for (const done of sync === syncs ? SOME : [0]) {
        const { book, before, outcome } = await failing(act, { sync, done });
        expect([sync, done, outcome]).toEqual([sync, done, sync === syncs ? `${STOPPED} Nothing was changed.` : STOPPED]);
        expect(state(book)).toEqual(before);
        await act(excelHost(mockExcel(book).run));
        const whole = await prepared();
        await act(excelHost(mockExcel(whole).run));
        expect({ ...state(book), sheets: withoutIds(book) }).toEqual({ ...state(whole), sheets: withoutIds(whole) });
      }
    }
  }, 60_000);

  test("and whose Excel answers no more says where to look", async () => {
    const { outcome } = await failing(act, { sync: await syncsOf(act), done: 1, andAfter: true });
    expect(outcome).toMatch(/\(GeneralException\) What was done before that is not known, since Excel no longer answers: look at \S.+\.$/);
  });
});

/** Excel gives what is put in anew an id of its own. */
const withoutIds = (book: ExcelBook) => state(book).sheets.map((sheet) => ({ ...sheet, pictures: sheet.pictures.map((picture) => ({ ...picture, id: "" })) }));

test("a write into what a formula spills is not typed back, and what was written is said cell by cell", async () => {
  const edits = [
    {
      ...B2,
      cells: [
        [99, 98],
        [97, null],
      ],
    },
    { sheet: "Summary 2", row: 5, column: 2, cells: [[1]] },
  ];
  const { book, outcome } = await failing((host) => host.write(edits), { sync: 3, done: 1 });
  expect(outcome).toBe(`${STOPPED} It could not be taken back. Changed: Bores!B2:B3, Bores!C2. Not changed: 'Summary 2'!C6.`);
  expect([book.cell(B2)?.value, book.cell(at("Bores", 1, 2))?.value, book.cell(at("Summary 2", 5, 2))?.value]).toEqual([99, 98, 0]);
});

test("sheets that Excel does not let be taken out again are named", async () => {
  const book = await prepared();
  book.deleteSheet = () => {};
  const { run } = mockExcel(book, { failing: { sync: book.syncs + 2, error: ERROR, done: 1 } });
  await expect(excelHost(run).addSheets(DESCRIBED)).rejects.toThrow(`${STOPPED} It could not be taken back wholly. Left of it: the sheet Gap limits.`);
});

test("where Excel refuses to set pages up for printing, the sheets come without that", async () => {
  const book = await prepared();
  const error = Object.assign(new RichApiError("GeneralException", "No printer."), { debugInfo: { errorLocation: "PageLayout.orientation" } });
  const { run } = mockExcel(book, { failing: { sync: book.syncs + 2, error, done: 20 } });
  await excelHost(run).addSheets(DESCRIBED);
  expect(book.sheets.map(({ name }) => name)).toEqual(["Bores", "Empty", "Summary 2", "Gap limits", "Gaps"]);
  const { notes } = book.sheet("Gap limits")!;
  expect([notes.some(({ what }) => what === "dataValidation.rule"), notes.some(({ what }) => what.startsWith("pageLayout"))]).toEqual([true, false]);
});

test("in a workbook whose structure is protected no sheet is added", async () => {
  const book = new ExcelBook(BOOK);
  book.isProtected = true;
  const sentence =
    "The structure of this workbook is protected, so that no sheet can be added: take the protection off, or work in a new workbook. Nothing was added.";
  await expect(excelHost(mockExcel(book).run).addSheets(DESCRIBED)).rejects.toThrow(sentence);
  expect(book.sheets).toHaveLength(3);
});

test("a table of the same name, in whatever letters, is refused", async () => {
  const table = { name: "gaplimits", sheet: "Bores", area: { row: 0, column: 0, rows: 4, columns: 3 }, headerRows: 1, totalsRows: 0, columns: [] };
  const book = new ExcelBook(BOOK, { tables: [table] });
  await expect(excelHost(mockExcel(book).run).addSheets(DESCRIBED)).rejects.toThrow(
    'There is a table "GapLimits" in this workbook already: rename it, or work in a new workbook. Nothing was added.',
  );
  expect(book.sheets).toHaveLength(3);
});
