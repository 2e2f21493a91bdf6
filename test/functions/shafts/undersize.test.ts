import { grindingsOf } from "../../../src/functions/shafts/undersize.ts";

const row = (...values: (number | null)[]) => ({ rows: 1, columns: values.length, values });

test("each listed undersize with what its journal is ground to, the smallest first, empty cells left out", () => {
  expect(grindingsOf(50, row(0.5, null, 0.25))).toEqual([
    { undersize: 0.25, finish: 49.75 },
    { undersize: 0.5, finish: 49.5 },
  ]);
});

// By hand: 54 − 2 × 2.105 − 0.05 and 54 − 2 × 2.23 − 0.05; the undersize whose shell is not measured goes by itself.
test("with measured shells the journal is ground to what their housing and the clearance leave", () => {
  expect(grindingsOf(50, row(0.25, 0.5, 0.75), { housing: 54, shells: row(2.105, 2.23, null), clearance: 0.05 })).toEqual([
    { undersize: 0.25, finish: 49.74 },
    { undersize: 0.5, finish: 49.49 },
    { undersize: 0.75, finish: 49.25 },
  ]);
});

test("shells of another shape, or without their housing or clearance, are refused by name", () => {
  const [undersizes, shells] = [row(0.25, 0.5), row(2.105, 2.23)];
  expect(grindingsOf(50, undersizes, { housing: 54, shells: row(2.105), clearance: 0.05 })).toMatchObject({
    ...{ code: "shape", param: "shells", got: "1×1", want: "undersizes of 1×2" },
  });
  expect(grindingsOf(50, undersizes, { shells, clearance: 0.05 })).toMatchObject({
    ...{ code: "missing", param: "housing", want: "the bore of the housing that the shells go into" },
  });
  expect(grindingsOf(50, undersizes, { shells, housing: 54 })).toMatchObject({ code: "missing", param: "clearance", want: "the oil clearance to grind for" });
});

test("a shell that asks for a journal far from its undersize is asked about: it may be two walls", () => {
  expect(grindingsOf(50, row(0.25), { housing: 54, shells: row(4.21), clearance: 0.05 })).toMatchObject({
    ...{ code: "unfit", param: "shells", got: 4.21 },
    want: "in housing 54 it would have the journal ground to 45.53 for undersize 0.25: is it one wall?",
  });
});
