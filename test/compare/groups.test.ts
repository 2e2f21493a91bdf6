import { compare, reading } from "./stand.ts";

const cylinders = (values: readonly number[], more: object = {}) => values.map((value, at) => reading(value, { cylinder: `${at + 1}`, ...more }));

describe("cylinders taken together", () => {
  // NIST/SEMATECH e-Handbook 1.3.5.3, unequal variances; the interval by hand: sd 0.001 and 0.001528, ν 3.448, t 2.96.
  test("a difference of the means with its interval, and whether it leaves zero out", () => {
    const { groups } = compare(cylinders([0.011, 0.013, 0.012]), cylinders([0.021, 0.024, 0.022]));
    expect(groups).toEqual([
      {
        engine: "A",
        characteristic: "bore",
        cylinders: 3,
        difference: 0.01033,
        from: expect.closeTo(0.0072, 4),
        to: expect.closeTo(0.01346, 4),
        p: expect.closeTo(0.00123, 5),
        differs: true,
        says: expect.stringMatching(/^0\.01033 larger on average over 3 cylinders \(0\.0072\d* to 0\.0134\d*, p 0\.00122\d*\)$/),
      },
    ]);
  });

  test("a cylinder counts once, by the mean of its places: more places do not make it surer", () => {
    const one = compare(cylinders([73, 73.01, 73.02]), cylinders([73.02, 73.03, 73.05]));
    const three = ["top", "middle", "bottom"].map((position) => ({ position }));
    const many = compare(
      three.flatMap((more) => cylinders([73, 73.01, 73.02], more)),
      three.flatMap((more) => cylinders([73.02, 73.03, 73.05], more)),
    );
    expect(many.groups).toEqual(one.groups);
  });

  test("only places that both sides have count", () => {
    const { groups } = compare([...cylinders([73, 73.01]), reading(99, { position: "middle" })], cylinders([73.02, 73.04]));
    expect(groups[0]).toMatchObject({ cylinders: 2, difference: 0.025 });
  });

  test("readings without an uncertainty count, slips and unlike units do not", () => {
    const bare = { uncertainty: undefined };
    const { groups, changes } = compare(cylinders([73, 73.01, 73.02], bare), [...cylinders([73.02, 73.03], bare), reading(37.02, { cylinder: "3", ...bare })]);
    expect([changes.length, groups[0]!.cylinders]).toEqual([0, 2]);
  });

  test("readings that name no cylinder belong to no group, however many there are", () => {
    const nameless = (value: number, position: string) => reading(value, { cylinder: "", position });
    const { changes, groups } = compare([nameless(73, "top"), nameless(73.01, "bottom")], [nameless(73.1, "top"), nameless(73.12, "bottom")]);
    expect([changes.length, groups]).toEqual([2, []]);
  });

  test("one cylinder is no group, and equal ones show no spread", () => {
    expect(compare([reading(73)], [reading(73.1)]).groups).toEqual([]);
    expect(compare(cylinders([73, 73]), cylinders([73.1, 73.1])).groups).toEqual([
      {
        engine: "A",
        characteristic: "bore",
        cylinders: 2,
        difference: null,
        from: null,
        to: null,
        p: null,
        differs: false,
        says: "cannot tell: neither group has any spread, and no uncertainty says what that is worth",
      },
    ]);
  });

  test("two engines are two groups of one characteristic", () => {
    const { groups } = compare(cylinders([0.3, 0.31, 0.32]), cylinders([0.4, 0.41, 0.43], { engine: "B" }));
    expect(groups).toMatchObject([{ engine: "", cylinders: 3, differs: true }]);
  });
});
