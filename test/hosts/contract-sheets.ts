import { emptySheet, type SheetSpec, type WorkbookSpec } from "../../src/workbook/sheet-spec.ts";
import type { Where } from "./contract.ts";
import { at, formula, refusal, value } from "./look.ts";
import { DESCRIBED } from "./spec-sample.ts";
import type { Stage } from "./stage.ts";

/** A picture of one black pixel. */
export const DOT = {
  name: "Bore 1",
  description: "The bore is 73.02 at the top.",
  png: "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==",
  width: 320,
  height: 200,
};

const STANDARD: WorkbookSpec = { sheets: [emptySheet("Standards")], names: [{ name: "Standard", formula: "73" }] };

/** The cells of the first described sheet, and nothing else of it. */
const BARE: SheetSpec = {
  ...emptySheet("Bare"),
  cells: DESCRIBED.sheets[0]!.cells.map(({ row, column, content }) => ({ row, column, content, style: "plain" })),
};

/** Sheets that come with all that is on them, and pictures. */
export function furnishing(stage: () => Stage, where: Where): void {
  test("described sheets come with their cells, formulas and names, and cells to type into are blank", async () => {
    const { host } = stage();
    await host.addSheets(DESCRIBED);
    const book = await host.read();
    expect(book.sheets.map(({ name }) => name)).toEqual(["Bores", "Empty", "Summary 2", "Gap limits", "Gaps"]);
    expect([value(book, at("Gap limits", 0, 0)), value(book, at("Gap limits", 2, 1)), value(book, at("Gap limits", 3, 0))]).toEqual(["Limits", 0.05, "73,02"]);
    expect([value(book, at("Gap limits", 2, 2)), value(book, at("Gaps", 2, 0))]).toEqual([null, null]);
    expect(formula(book, at("Gaps", 0, 0))).toBe("=HATCH.VERDICT(0.06,,'Gap limits'!B3)");
    expect(book.names).toEqual([{ name: "Gauges_here", formula: "='Gap limits'!$A$3:$A$4" }]);
  });

  where("tables")("described tables come with their names, places and headings", async () => {
    const { host } = stage();
    await host.addSheets(DESCRIBED);
    const place = { area: { row: 1, column: 0, rows: 3, columns: 3 }, headerRows: 1, totalsRows: 0, columns: ["Gauge", "Upper", "Measured on"] };
    expect((await host.read()).tables).toEqual([{ name: "GapLimits", sheet: "Gap limits", ...place }]);
  });

  where("styles")("what a sheet looks like, what may be typed and what stays in view are as described", async () => {
    const { host, worn } = stage();
    await host.addSheets(DESCRIBED);
    const { print: _, ...limits } = await worn!("Gap limits");
    expect(limits).toEqual({
      tables: ["A2:C4"],
      frozen: { rows: 2, columns: 1 },
      widths: [140, 77, 84],
      rules: { "B3:B4": "decimal greaterThan 0", "C3:C4": "date greaterThan 36526" },
      formats: { B3: "0.000", C4: "yyyy\\-mm\\-dd" },
      fills: { A2: "#E3E8EC", C4: "#FFF8E1" },
    });
    expect((await worn!("Gaps")).rules).toEqual({
      A2: "list mm",
      A3: "list 'Gap limits'!$A$3:$A$4",
      A4: "decimal greaterThanOrEqual 0",
      A5: "decimal greaterThanOrEqual -1e+300",
    });
  });

  where("print set-up")("sheets are set up for printing as described", async () => {
    const { host, worn } = stage();
    await host.addSheets(DESCRIBED);
    expect([(await worn!("Gap limits")).print, (await worn!("Gaps")).print]).toEqual(DESCRIBED.sheets.map(({ print }) => print));
  });

  where("other names")("a described name of a number is one of the workbook's names", async () => {
    const { host } = stage();
    await host.addSheets(STANDARD);
    expect((await host.read()).names).toEqual([{ name: "Standard", formula: "=73" }]);
  });

  where("other names", "refused")("a described name of a number is refused, and nothing is added", async () => {
    const { host } = stage();
    const before = await host.read();
    expect(await refusal(host.addSheets(STANDARD))).toBe('The name "Standard" stands for 73: the grid knows names of cells alone. Nothing was added.');
    expect(await host.read()).toEqual(before);
  });

  for (const ability of ["tables", "styles", "print set-up"] as const)
    where(ability, "left out")(`described ${ability} take nothing else of a sheet away`, async () => {
      const { host } = stage();
      await host.addSheets({ sheets: [DESCRIBED.sheets[0]!, BARE], names: [] });
      const [dressed, bare] = (await host.read()).sheets.slice(-2);
      expect({ ...dressed, name: BARE.name }).toEqual(bare);
      expect(value(await host.read(), at(BARE.name, 2, 1))).toBe(0.05);
    });

  where("tables", "left out")("described tables are not told", async () => {
    const { host } = stage();
    await host.addSheets(DESCRIBED);
    expect((await host.read()).tables ?? []).toEqual([]);
  });

  where("undo")("described sheets are one step back, names and all", async () => {
    const { host, undo } = stage();
    const before = await host.read();
    await host.addSheets(DESCRIBED);
    await undo!();
    expect(await host.read()).toEqual(before);
    await host.addSheets(DESCRIBED);
    expect((await host.read()).sheets).toHaveLength(5);
  });

  test("a name that stands for something already is refused, and nothing is added", async () => {
    const { host } = stage();
    const names = DESCRIBED.names.map((name) => ({ ...name, formula: name.formula.replace("Gap limits", "Run-in") }));
    await host.addSheets({ sheets: [{ ...DESCRIBED.sheets[0]!, name: "Run-in", tables: [] }], names });
    const before = await host.read();
    expect(await refusal(host.addSheets(DESCRIBED))).toBe(
      'The name "Gauges_here" stands for something in this workbook already: take it out of the list of names, or work in a new workbook. Nothing was added.',
    );
    expect(await host.read()).toEqual(before);
  });

  where("pictures")("a picture stands at its cell with its words, and is one step back", async () => {
    const { host, undo, pictures } = stage();
    await host.insertPicture(at("Summary 2", 2, 1), DOT);
    expect(await pictures!()).toEqual([{ corner: at("Summary 2", 2, 1), picture: DOT }]);
    await undo!();
    expect(await pictures!()).toEqual([]);
  });

  where("pictures")("the picture that stands first on a sheet is told, its file as it was", async () => {
    const { host } = stage();
    expect(await host.firstPicture("Summary 2")).toBeNull();
    expect(await host.firstPicture("Nowhere")).toBeNull();
    const other = { ...DOT, png: "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==" };
    await host.insertPicture(at("Summary 2", 5, 1), other);
    await host.insertPicture(at("Summary 2", 2, 1), DOT);
    expect(await host.firstPicture("Summary 2")).toBe(DOT.png);
    expect(await host.firstPicture("Bores")).toBeNull();
  });

  where("pictures")("a picture on a sheet that is missing or protected is refused", async () => {
    const { host, protect, pictures } = stage();
    expect(await refusal(host.insertPicture(at("Nowhere", 0, 0), DOT))).toBe('There is no sheet "Nowhere" in this workbook.');
    await protect!("Bores");
    expect(await refusal(host.insertPicture(at("Bores", 0, 0), DOT))).toContain('The sheet "Bores" is protected');
    expect(await pictures!()).toEqual([]);
  });

  where("pictures", "refused")("a picture is refused in a sentence, and nothing changes", async () => {
    const { host } = stage();
    const before = await host.read();
    expect(await refusal(host.insertPicture(at("Summary 2", 2, 1), DOT))).toMatch(/^[A-Z].* takes no pictures: .*\.$/);
    expect(await host.read()).toEqual(before);
  });
}
