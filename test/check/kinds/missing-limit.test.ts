import { checkWorkbook } from "../../../src/check/check-workbook.ts";
import { proposeLayout } from "../../../src/layout/propose.ts";
import { typed } from "../../layout/typed.ts";
import { foundIn, readings, shown } from "./declared.ts";

test("a reading without any limit is told with its digits", () => {
  const [finding] = foundIn("missing limit", readings(["gap", 0.3, null, null], ["gap", 0.31, 0.25, 0.5]));
  expect(finding).toMatchObject({
    ...{ value: 0.3, lower: null, upper: null, margin: null, verdict: null },
    details: { readings: 1, characteristic: null, results: [] },
    sentence: "0.3 has no limit to be judged by",
  });
  expect(shown(finding!)).toEqual(["missing limit", "fault"]);
});

test("all readings of a characteristic are told once, with what is worked out from them", async () => {
  const snapshot = await typed({
    Sheet1: [
      ["Cyl", "Skirt"],
      [1, 72.98],
      [2, 72.97],
    ],
  });
  const mapping = { version: 1 as const, ranges: proposeLayout(snapshot).map(({ range }) => range) };
  expect(checkWorkbook(snapshot, mapping).findings).toMatchObject([
    {
      details: { readings: 2, characteristic: "piston skirt", results: ["piston clearance"] },
      sentence: "2 readings of piston skirt have no limit to be judged by; piston clearance has none either",
    },
  ]);
});
