import { memoryHost } from "../../../src/hosts/memory.ts";
import { foundIn, foundInCsv, foundInSnapshot, readings, shown } from "./declared.ts";

// Readings and limits are invented; margins are worked out by hand.
test("a reading over or under its limit: the sheet's own word, the distance in the digits of its parts, U with two digits", () => {
  const found = foundIn("outside limit", readings(["bore", 73.09, 73, 73.08, 0.00283], ["gap", 0.2, 0.25, 0.55, null], ["taper", 0.035, null, 0.025, null]));
  expect(found.map(({ value, margin, verdict, sentence, details }) => [value, margin, verdict, sentence, details])).toEqual([
    [0.035, -0.01, "over", "0.035 is over the upper limit 0.025 by 0.010", { uncertainty: 0, near: 0, rule: null, unseen: null }],
    [0.2, -0.05, "under", "0.2 is under the lower limit 0.25 by 0.05", { uncertainty: 0, near: 0, rule: null, unseen: null }],
    [
      73.09,
      -0.01,
      "over",
      "73.09 is over the upper limit 73.08 by 0.01, proven with an uncertainty of 0.0028",
      { uncertainty: 0.00283, near: 0, rule: "full U", unseen: null },
    ],
  ]);
  expect(found.map(shown)).toEqual([
    ["over", "outside"],
    ["under", "outside"],
    ["over", "outside"],
  ]);
});

test("a formula that cannot be looked into: its cell's own word, and why its limits are not shown", async () => {
  const cells = [
    ["Gap"],
    [0.7, { formula: "=HATCH.VERDICT(A2, Least, Most)", value: "over" }],
    [0.3, { formula: "=HATCH.MARGIN(A3, Least, Most)", value: -0.05 }],
  ];
  const found = foundInSnapshot("outside limit", await memoryHost([{ name: "Rings", cells }]).read());
  expect(found.map(({ sentence, details }) => [sentence, details.unseen])).toEqual([
    [
      "the sheet gives a margin of -0.05, outside a limit; its formula cannot be looked into (the name Least is not known), so its limits are not shown",
      "the name Least is not known",
    ],
    ["the sheet says over; its formula cannot be looked into (the name Least is not known), so its limits are not shown", "the name Least is not known"],
  ]);
});

test("in a file of readings it has its line", async () => {
  const [finding] = await foundInCsv("outside limit", "cylinder,value,upper,uncertainty\n1,2,3,\n2,3.5,3,0.1\n");
  expect(finding).toMatchObject({
    line: 3,
    label: "cylinder 2",
    margin: -0.5,
    sentence: "3.5 is over the upper limit 3 by 0.5, proven with an uncertainty of 0.1",
  });
});
