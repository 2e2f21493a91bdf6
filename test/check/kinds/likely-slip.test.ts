import { foundIn, foundInCsv, readings, shown } from "./declared.ts";

// Which slip a reading looks like is SLIP's; readings are invented.
const bores = (typed: number): (number | string | null)[][] => [73.03, 73.02, typed, 73.02, 73.01, 73.01].map((value) => ["bore", value, null, 74]);

test.each([
  [7.302, "decimal point", "7.302 is far from 73.015, the middle of similar readings: is the decimal point in its place?"],
  [37.02, "two digits swapped", "37.02 is far from 73.015, the middle of similar readings: were two digits swapped?"],
  [73.92, "one digit wrong", "73.92 is far from 73.02, the middle of similar readings: is one digit wrong?"],
])("%d among readings of 73.02: %s", (typed, slip, sentence) => {
  const found = foundIn("likely slip", readings(...bores(typed)));
  expect(found).toMatchObject([{ value: typed, details: { slip, beside: "similar readings", causes: [] }, sentence }]);
  expect(shown(found[0]!)).toEqual(["likely slip", "doubt"]);
});

test("two limits tell it without any like reading", async () => {
  const [finding] = await foundInCsv("likely slip", "characteristic,value,lower,upper\nbore,730.2,73,73.08\n");
  expect(finding!.details).toMatchObject({ slip: "decimal point", expected: 73.04, beside: "its limits" });
  expect(finding!.sentence).toMatch(/^730\.2 is far from 73\.04, the middle of its limits: is the decimal point in its place\?/);
});
