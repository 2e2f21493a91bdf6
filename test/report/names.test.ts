import { distinct, namesOf } from "../../src/report/gather/source.ts";

test("rows and columns of a block are named by the words that its cells do not share", () => {
  const labels = ["top", "bottom"].map((height) => ["Thrust", "Pin"].map((axis) => `Cylinder 1, ${height}, ${axis}`));
  expect(namesOf(labels)).toEqual({ shared: "Cylinder 1", rows: ["top", "bottom"], columns: ["Thrust", "Pin"] });
});

test("so are they where one heading names both", () => {
  const labels = ["Just below top", "Bottom"].map((height) => ["thrust", "pin"].map((axis) => `Engine A, Cylinder 1, ${height} ${axis}`));
  expect(namesOf(labels)).toEqual({ shared: "Engine A, Cylinder 1", rows: ["Just below top", "Bottom"], columns: ["thrust", "pin"] });
});

test("a single row or column needs no name of its own", () => {
  expect(namesOf([["Cylinder 1, Thrust", "Cylinder 1, Pin"]])).toEqual({ shared: "Cylinder 1", rows: [""], columns: ["Thrust", "Pin"] });
  expect(namesOf([["Cylinder 1, top"], ["Cylinder 1, bottom"]])).toEqual({ shared: "Cylinder 1", rows: ["top", "bottom"], columns: [""] });
});

test("cells without words have no names", () => {
  expect(namesOf([["", ""]])).toEqual({ shared: "", rows: [""], columns: ["", ""] });
});

test("names that do not tell rows apart give way to numbers", () => {
  expect(distinct(["top", "bottom"], "height")).toEqual(["top", "bottom"]);
  expect(distinct(["top", "top"], "height")).toEqual(["height 1", "height 2"]);
  expect(distinct(["top", ""], "height")).toEqual(["height 1", "height 2"]);
});
