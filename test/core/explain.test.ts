import { explain } from "../../src/core/explain.ts";

const FIT = { lower: 0.009, upper: 0.05 };

// Clearances of a 50 H7/g6 fit, 0.009 to 0.050 mm (ISO 286); the default rule of ISO 14253-1 (from memory) where an uncertainty is given.
describe("the sentence of a verdict", () => {
  test.each([
    [0.05, "0.05 is within 0.009 to 0.05, exactly on the upper limit"],
    [0.009, "0.009 is within 0.009 to 0.05, exactly on the lower limit"],
    [0.0295, "0.0295 is within 0.009 to 0.05, 0.0205 from the upper limit"],
    [0.0505, "0.0505 is over the upper limit 0.05 by 0.0005"],
    [0.0085, "0.0085 is under the lower limit 0.009 by 0.0005"],
  ])("of %p between two limits", (value, said) => {
    expect(explain(value, FIT)).toBe(said);
  });

  test("of one limit names that limit and the distance to it", () => {
    expect(explain(0.03, { upper: 0.05 })).toBe("0.03 is within the upper limit 0.05 by 0.02");
    expect(explain(0.05, { upper: 0.05 })).toBe("0.05 is within the upper limit 0.05, exactly on it");
    expect(explain(0.03, { lower: 0.009 })).toBe("0.03 is within the lower limit 0.009 by 0.021");
    expect(explain(0.009, { lower: 0.009 })).toBe("0.009 is within the lower limit 0.009, exactly on it");
  });

  test("without a limit is none", () => {
    expect(explain(0.03, {})).toBe("");
  });

  test("says that a value is near a limit, and what counts as near", () => {
    expect(explain(0.048, FIT, 0, 0.005)).toBe("0.048 is within 0.009 to 0.05, 0.002 from the upper limit, near limit as it is no further than 0.005");
    expect(explain(0.03, FIT, 0, 0.005)).toBe("0.03 is within 0.009 to 0.05, 0.02 from the upper limit");
    expect(explain(0.048, FIT, 0.001, 0.005)).toBe(
      "0.048 is within 0.009 to 0.05, 0.002 from the upper limit, proven with an uncertainty of 0.001, near limit as it is no further than 0.005",
    );
  });

  test("says what is proven, on either side of a limit", () => {
    expect(explain(0.03, FIT, 0.003)).toBe("0.03 is within 0.009 to 0.05, 0.02 from the upper limit, proven with an uncertainty of 0.003");
    expect(explain(0.054, FIT, 0.003)).toBe("0.054 is over the upper limit 0.05 by 0.004, proven with an uncertainty of 0.003");
    expect(explain(0.005, FIT, 0.003)).toBe("0.005 is under the lower limit 0.009 by 0.004, proven with an uncertainty of 0.003");
  });

  test("says on which side of the limit a value stands that is not proven", () => {
    expect(explain(0.049, FIT, 0.003)).toBe("0.049 is inside the upper limit 0.05 by 0.001, not proven either way with an uncertainty of 0.003");
    expect(explain(0.05, FIT, 0.003)).toBe("0.05 is on the upper limit 0.05, not proven either way with an uncertainty of 0.003");
    expect(explain(0.052, FIT, 0.003)).toBe("0.052 is over the upper limit 0.05 by 0.002, not proven either way with an uncertainty of 0.003");
    expect(explain(0.008, FIT, 0.003)).toBe("0.008 is under the lower limit 0.009 by 0.001, not proven either way with an uncertainty of 0.003");
  });

  test("says when limits less than twice the uncertainty apart leave nothing to prove, and only then", () => {
    const short = "0.05 is on the upper limit 0.05, not proven either way with an uncertainty of 0.02";
    expect(explain(0.05, { lower: 0.02, upper: 0.05 }, 0.02)).toBe(`${short}, which is too much for limits so close together`);
    expect(explain(0.05, { lower: 0.01, upper: 0.05 }, 0.02)).toBe(short);
    expect(explain(0.05, { upper: 0.05 }, 0.02)).toBe(short);
    expect(explain(0.05, { lower: 0.05 }, 0.02)).toBe("0.05 is on the lower limit 0.05, not proven either way with an uncertainty of 0.02");
  });
});
