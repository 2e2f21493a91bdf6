import { foundIn, foundInCsv, readings, shown } from "./declared.ts";

test("what cannot be judged is told with the cell as it stands and what is wanted", () => {
  const found = foundIn("refused", readings(["gap", "tight", 0.25, 0.55], ["gap", "73,02", 0.25, 0.55], ["gap", 0.3, 0.55, 0.25]));
  expect(found.map(({ value, lower, upper, margin, verdict, sentence }) => [value, lower, upper, margin, verdict, sentence])).toEqual([
    ["tight", null, null, null, null, 'value holds the text "tight": it must be a number'],
    ["73,02", null, null, null, null, 'value holds the text "73,02": a decimal comma is not read, type it with this sheet\'s decimal sign'],
    [0.3, null, null, null, null, "lower 0.55 is larger than upper 0.25: are they swapped?"],
  ]);
  for (const { details, sentence } of found) expect(details).toEqual({ why: sentence });
  expect(found.map(shown)).toEqual(Array(3).fill(["refused", "fault"]));
});

test("in a file of readings the text stands as it was typed", async () => {
  const [finding] = await foundInCsv("refused", "value,upper\ntight,2\n");
  expect(finding).toMatchObject({ line: 2, value: "tight", details: { why: 'value holds the text "tight": it must be a number' } });
});
