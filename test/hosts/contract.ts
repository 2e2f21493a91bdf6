import { ABILITIES, type Abilities, type Ability, MARK_FILL } from "../../src/workbook/port.ts";
import { naming } from "./contract-names.ts";
import { placing } from "./contract-places.ts";
import { furnishing } from "./contract-sheets.ts";
import { at, formula, refusal, value } from "./look.ts";
import { BOOK, type Stage, type Stagehand } from "./stage.ts";

const A1 = at("Bores", 0, 0);
const B2 = at("Bores", 1, 1);
const OWN_COLOUR = "#00FF00";

/** Waits for a host that tells of changes a little later. */
async function until(holds: () => boolean): Promise<boolean> {
  for (let turn = 0; turn < 100 && !holds(); turn++) await new Promise((resolve) => setTimeout(resolve, 10));
  return holds();
}

/** Where a host says that it can do something, or that it refuses or leaves it out: the test that it does. */
export type Where = (ability: Ability, says?: Abilities[Ability]) => (name: string, body: () => Promise<void>) => void;

/** What every adapter of the port promises. `makeHost` opens a workbook with the given sheets; `abilities` are those that the adapter states. */
export function hostContract(name: string, makeHost: Stagehand, abilities: Abilities): void {
  const looked = new Set<Ability>();
  const where: Where = (ability, says = "yes") => {
    looked.add(ability);
    // What a host says otherwise of is not asked of it, rather than counted as skipped.
    return abilities[ability] === says ? test : () => {};
  };
  describe(`${name} keeps the contract of the sheet port`, () => {
    let stage: Stage;
    beforeEach(async () => {
      stage = await makeHost(BOOK);
    });
    afterEach(async () => {
      await stage.close?.();
    });

    reading(() => stage);
    writing(() => stage);
    steps(() => stage, where);
    marking(() => stage);
    watching(() => stage);
    keeping(() => stage);
    placing(() => stage);
    naming(makeHost, where);
    furnishing(() => stage, where);

    test("the host says what it can do, and the contract looks at each of it", () => {
      expect(stage.host.abilities).toEqual(abilities);
      expect(Object.keys(abilities).sort()).toEqual(Object.keys(ABILITIES).sort());
      expect([...looked].sort()).toEqual(Object.keys(ABILITIES).sort());
    });
  });
}

function reading(stage: () => Stage): void {
  test("sheets come in the workbook's order, an empty one included", async () => {
    const book = await stage().host.read();
    expect(book.sheets.map((sheet) => sheet.name)).toEqual(["Bores", "Empty", "Summary 2"]);
    expect(book.sheets[1]!.values.flat().every((cell) => cell === null)).toBe(true);
  });

  test("values and formulas have one shape, and every row one length", async () => {
    for (const sheet of (await stage().host.read()).sheets) {
      const widths = [...sheet.values, ...sheet.formulas].map((row) => row.length);
      expect(sheet.formulas.length).toBe(sheet.values.length);
      expect(new Set(widths).size).toBeLessThanOrEqual(1);
    }
  });

  test("numbers, text, truth values and dates keep their kind, and a blank is null", async () => {
    const book = await stage().host.read();
    expect(value(book, B2)).toBe(73.01);
    expect(value(book, A1)).toBe("Bore");
    expect(value(book, at("Bores", 3, 1))).toBe(true);
    expect(value(book, at("Bores", 3, 2))).toBe(45292);
    expect(value(book, at("Bores", 2, 2))).toBeNull();
    expect(formula(book, B2)).toBeNull();
  });

  test("a cell away from the corner is found at its address", async () => {
    const book = await stage().host.read();
    expect(value(book, at("Summary 2", 1, 2))).toBe("sum");
    expect(value(book, at("Summary 2", 2, 2))).toBeCloseTo(146.01, 9);
    expect(formula(book, at("Summary 2", 2, 2))).toBe("=Bores!B2+Bores!C2");
  });

  test("a formula that says nothing yet reads as blank text, not as a number", async () => {
    const book = await stage().host.read();
    expect(value(book, at("Bores", 2, 4)) || null).toBeNull();
    expect(formula(book, at("Bores", 2, 4))).toBe("=HATCH.TAPER(B3:C3,1)");
  });

  test("an error cell is its code, with the sentence where the host has it", async () => {
    const book = await stage().host.read();
    expect(value(book, at("Bores", 3, 4))).toMatchObject({ error: "#DIV/0!" });
    const fault = value(book, at("Summary 2", 3, 2)) as { error: string; message?: string };
    expect(fault.error).toBe("#VALUE!");
    expect(fault.message ?? "are they swapped?").toContain("are they swapped?");
  });

  test("a spilled cell has its value and no formula of its own", async () => {
    const book = await stage().host.read();
    expect([value(book, at("Summary 2", 4, 2)), value(book, at("Summary 2", 5, 2))]).toEqual([0.02, 0]);
    expect([formula(book, at("Summary 2", 4, 2)), formula(book, at("Summary 2", 5, 2))]).toEqual(["=HATCH.TAPER({73.03,73.01;73,73},1)", null]);
  });
}

function writing(stage: () => Stage): void {
  test("what is written is read back, kind for kind, and null leaves a cell as it is", async () => {
    const { host } = stage();
    const cells = [
      [73.05, null],
      ["a note", false],
    ];
    await host.write([{ sheet: "Bores", row: 1, column: 1, cells }]);
    const book = await host.read();
    expect([value(book, B2), value(book, at("Bores", 1, 2))]).toEqual([73.05, 73]);
    expect([value(book, at("Bores", 2, 1)), value(book, at("Bores", 2, 2))]).toEqual(["a note", false]);
  });

  test("text that starts with = is written as a formula", async () => {
    const { host } = stage();
    await host.write([{ sheet: "Empty", row: 4, column: 3, cells: [["=HATCH.TAPER(Bores!B2:C2,1)"]] }]);
    expect(formula(await host.read(), at("Empty", 4, 3))).toBe("=HATCH.TAPER(Bores!B2:C2,1)");
  });

  test("empty text empties a cell", async () => {
    const { host } = stage();
    await host.write([{ sheet: "Bores", row: 1, column: 1, cells: [[""]] }]);
    expect(value(await host.read(), B2)).toBeNull();
  });

  test("a missing sheet is refused in a sentence that names it, and nothing is written", async () => {
    const { host } = stage();
    const edits = [
      { sheet: "Bores", row: 1, column: 1, cells: [[99]] },
      { sheet: "Nowhere", row: 0, column: 0, cells: [[1]] },
    ];
    expect(await refusal(host.write(edits))).toBe('There is no sheet "Nowhere" in this workbook.');
    expect(value(await host.read(), B2)).toBe(73.01);
  });

  test("selecting on a missing sheet is refused", async () => {
    expect(await refusal(stage().host.select(at("Nowhere", 0, 0)))).toBe('There is no sheet "Nowhere" in this workbook.');
  });
}

function marking(stage: () => Stage): void {
  test("marks colour the cells and give each its earlier look back", async () => {
    const { host, fill, paint } = stage();
    await paint(A1, OWN_COLOUR);
    await host.mark([
      { cell: A1, tone: "outside" },
      { cell: B2, tone: "near" },
    ]);
    expect([await fill(A1), await fill(B2)]).toEqual([MARK_FILL.outside, MARK_FILL.near]);
    expect(await host.unmark()).toBe(2);
    expect([await fill(A1), await fill(B2)]).toEqual([OWN_COLOUR, null]);
  });

  test("marking again takes the earlier marks off first", async () => {
    const { host, fill, paint } = stage();
    await paint(A1, OWN_COLOUR);
    await host.mark([{ cell: A1, tone: "outside" }]);
    await host.mark([{ cell: B2, tone: "doubt" }]);
    expect([await fill(A1), await fill(B2)]).toEqual([OWN_COLOUR, MARK_FILL.doubt]);
    await host.mark([{ cell: B2, tone: "fault" }]);
    expect(await fill(B2)).toBe(MARK_FILL.fault);
    expect(await host.unmark()).toBe(1);
    expect([await fill(A1), await fill(B2)]).toEqual([OWN_COLOUR, null]);
  });

  test("a cell marked twice in one go gets its own look back, and counts once", async () => {
    const { host, fill } = stage();
    await host.mark([
      { cell: B2, tone: "outside" },
      { cell: { ...B2 }, tone: "near" },
    ]);
    expect(await host.unmark()).toBe(1);
    expect(await fill(B2)).toBeNull();
  });

  test("a workbook says whether it has marks", async () => {
    const { host } = stage();
    expect(await host.hasMarks()).toBe(false);
    await host.mark([{ cell: A1, tone: "outside" }]);
    expect(await host.hasMarks()).toBe(true);
    await host.unmark();
    expect(await host.hasMarks()).toBe(false);
  });

  test("unmarking a workbook without marks is nothing, and says so", async () => {
    expect(await stage().host.unmark()).toBe(0);
  });

  test("marks change no value and no formula", async () => {
    const { host } = stage();
    const before = await host.read();
    await host.mark([{ cell: at("Bores", 1, 4), tone: "outside" }]);
    expect(await host.read()).toEqual(before);
  });

  test("a mark on a missing sheet is refused, and no cell is coloured", async () => {
    const { host, fill } = stage();
    const marks = [
      { cell: B2, tone: "outside" as const },
      { cell: at("Nowhere", 0, 0), tone: "outside" as const },
    ];
    expect(await refusal(host.mark(marks))).toBe('There is no sheet "Nowhere" in this workbook.');
    expect(await fill(B2)).toBeNull();
  });
}

/** Steps back, protection, an active cell, a pane that is opened anew. */
function steps(stage: () => Stage, where: Where): void {
  where("undo")("all edits of one write are one step back", async () => {
    const { host, undo } = stage();
    const edits = [
      { sheet: "Bores", row: 1, column: 1, cells: [[99, 98]] },
      { sheet: "Summary 2", row: 1, column: 2, cells: [["total"]] },
    ];
    await host.write(edits);
    await undo!();
    const book = await host.read();
    expect([value(book, B2), value(book, at("Bores", 1, 2)), value(book, at("Summary 2", 1, 2))]).toEqual([73.01, 73, "sum"]);
  });

  where("protection")("a protected sheet is refused in a sentence that names it", async () => {
    const { host, protect } = stage();
    await protect!("Bores");
    const sentence = 'The sheet "Bores" is protected: take the protection off, or work on a copy, and try again.';
    expect(await refusal(host.write([{ sheet: "Bores", row: 1, column: 1, cells: [[99]] }]))).toBe(sentence);
    expect(await refusal(host.mark([{ cell: B2, tone: "outside" }]))).toBe(sentence);
    expect(value(await host.read(), B2)).toBe(73.01);
  });

  where("undo")("all marks are one step back", async () => {
    const { host, fill, undo } = stage();
    await host.mark([
      { cell: A1, tone: "outside" },
      { cell: at("Summary 2", 2, 2), tone: "near" },
    ]);
    await undo!();
    expect([await fill(A1), await fill(at("Summary 2", 2, 2))]).toEqual([null, null]);
    expect(await host.hasMarks()).toBe(false);
  });

  test("a pane that is opened anew takes off the marks of the one before", async () => {
    const { host, fill, again } = stage();
    await host.mark([{ cell: B2, tone: "outside" }]);
    expect(await (await again()).hasMarks()).toBe(true);
    expect(await (await again()).unmark()).toBe(1);
    expect(await fill(B2)).toBeNull();
  });

  where("active cell")("selecting makes the cell the active one", async () => {
    const { host, selected } = stage();
    await host.select(at("Summary 2", 2, 2));
    expect(await selected!()).toEqual(at("Summary 2", 2, 2));
  });

  where("active cell")("an area is selected whole, its first cell the active one", async () => {
    const { host, selected } = stage();
    const area = { ...B2, rows: 3, columns: 2 };
    await host.select(area);
    expect(await host.selection()).toEqual(area);
    expect(await selected!()).toEqual(B2);
  });
}

function watching(stage: () => Stage): void {
  test("a change by the person or by a write is told, until the watch is stopped", async () => {
    const { host, type } = stage();
    let told = 0;
    const stop = await host.watch(() => {
      told++;
    });
    await type(B2, 73.09);
    expect(await until(() => told > 0)).toBe(true);
    const afterTyping = told;
    await host.write([{ sheet: "Bores", row: 1, column: 1, cells: [[73.08]] }]);
    expect(await until(() => told > afterTyping)).toBe(true);
    await stop();
    const stopped = told;
    await type(B2, 73.07);
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect(told).toBe(stopped);
    expect(value(await host.read(), B2)).toBe(73.07);
  });

  test("marks are not told as changes, or checking would never end", async () => {
    const { host } = stage();
    let told = 0;
    const stop = await host.watch(() => {
      told++;
    });
    await host.mark([{ cell: B2, tone: "outside" }]);
    await host.unmark();
    await new Promise((resolve) => setTimeout(resolve, 30));
    await stop();
    expect(told).toBe(0);
  });
}

function keeping(stage: () => Stage): void {
  test("text kept under a key comes back, whatever is in it", async () => {
    const { host } = stage();
    const text = '{"range":"B2:C5","says":"⌀ <bore> & \\"taper\\""}\nsecond line';
    expect(await host.loadText("layout")).toBeNull();
    await host.storeText("layout", "first");
    await host.storeText("other", "apart");
    await host.storeText("layout", text);
    expect([await host.loadText("layout"), await host.loadText("other")]).toEqual([text, "apart"]);
  });

  test("texts and marks kept at one time are all kept", async () => {
    const { host } = stage();
    await Promise.all([host.storeText("one", "1"), host.mark([{ cell: B2, tone: "outside" }]), host.storeText("two", "2")]);
    expect([await host.loadText("one"), await host.loadText("two"), await host.unmark()]).toEqual(["1", "2", 1]);
  });
}
