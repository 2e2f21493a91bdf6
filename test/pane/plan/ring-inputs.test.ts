import { WorkbookCells } from "../../../src/formula/workbook-cells.ts";
import { Answers, ringInputs } from "../../../src/pane/plan/answers.ts";
import { FIELDS, type Form, firstForm } from "../../../src/pane/plan/fields.ts";
import { area } from "../../plan/stand.ts";

const values = [
  ["No. 1", 0.22, 0.31, 73.01],
  ["No. 2", 0.3, 0.28, 73.02],
];
const book = new WorkbookCells({ sheets: [{ name: "Rings", row: 0, column: 0, values, formulas: values.map((line) => line.map(() => null)) }] });

function inputs(form: Form) {
  const answers = new Answers(book, { ...firstForm("rings"), ...form }, FIELDS.rings);
  return { ...ringInputs(answers), troubles: answers.troubles };
}

test("one bore a row stands for every ring of its row", () => {
  const { rings, troubles } = inputs({ measured: "Rings!B1:C2", bore: "Rings!D1:D2" });
  expect(rings.map(({ bore }) => bore)).toEqual(["D1", "D1", "D2", "D2"].map((cell) => area("Rings", cell)));
  expect(troubles).toEqual({});
});

test("a row of readings a bore is taken whole", () => {
  expect(inputs({ measured: "Rings!B1:B2", bore: "Rings!C1:D2" }).rings.map(({ bore }) => bore)).toEqual(
    ["C1:D1", "C2:D2"].map((cells) => area("Rings", cells)),
  );
});

test("one target stands for all rings, a number or a cell", () => {
  expect(inputs({ measured: "Rings!B1:B2", by: "target", target: "0.3" }).rings.map(({ target }) => target)).toEqual([0.3, 0.3]);
  expect(inputs({ measured: "Rings!B1:B2", by: "target", target: "Rings!C1" }).rings[1]!.target).toEqual(area("Rings", "C1"));
});

test("rings that share their cylinder's name are told apart by their cells", () => {
  expect(inputs({ measured: "Rings!B1:C2", bore: "73", names: "Rings!A1:A2" }).rings.map(({ name }) => name)).toEqual([
    "No. 1, B1",
    "No. 1, C1",
    "No. 2, B2",
    "No. 2, C2",
  ]);
});

test("limits stand for all rings or for each, beside a bore, a target or alone", () => {
  const limits = { least: "Rings!B1:B2", most: "0.5" };
  expect(inputs({ measured: "Rings!B1:B2", bore: "73", ...limits }).rings).toMatchObject([
    { bore: 73, least: area("Rings", "B1"), most: 0.5 },
    { bore: 73, least: area("Rings", "B2"), most: 0.5 },
  ]);
  const alone = inputs({ measured: "Rings!B1:B2", by: "limits", ...limits });
  expect(alone.troubles).toEqual({});
  expect(Object.keys(alone.rings[0]!)).toEqual(["name", "measured", "least", "most"]);
  expect(Object.keys(inputs({ measured: "Rings!B1:B2", by: "limits" }).rings[0]!)).toEqual(["name", "measured"]);
  expect(inputs({ measured: "Rings!B1:B2", bore: "73", least: "Rings!B1:C1" }).troubles).toEqual({
    least: "this is 1 down and 2 across and the gaps are 2 down and 1 across: give one for all, one for each row, or one for each gap",
  });
});

test("ranges that do not go together are refused with both sizes", () => {
  expect(inputs({ measured: "Rings!B1:B2", by: "target", target: "Rings!B1:C1" }).troubles).toEqual({
    target: "this is 1 down and 2 across and the gaps are 2 down and 1 across: give one for all, one for each row, or one for each gap",
  });
  expect(inputs({ measured: "Rings!B1:B2", by: "target", target: "0.3 0.4" }).troubles).toEqual({ target: "one number is wanted here, or cells" });
});

test("what stands in a field that is not asked counts for nothing", () => {
  expect(inputs({ measured: "Rings!B1:B2", by: "target", target: "0.3", bore: "nowhere", perBore: "none" }).troubles).toEqual({});
});
