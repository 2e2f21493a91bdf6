import { choice, length } from "../../src/core/param.ts";
import { signature } from "../../src/core/signature.ts";

// Common practice of help texts: what may be left out stands in brackets.
test("a call is written with its inputs in order, those that may be left out in brackets", () => {
  const [hole, shaft, unit] = [length("hole"), length("shaft").optional(), choice("unit", ["mm", "in"]).default("mm")];
  expect(signature({ name: "VERSION", inputs: [] })).toBe("VERSION()");
  expect(signature({ name: "GAP", inputs: [{ name: "hole", param: hole }] })).toBe("GAP(hole)");
  const inputs = [
    { name: "hole", param: hole },
    { name: "shaft", param: shaft },
    { name: "unit", param: unit },
  ];
  expect(signature({ name: "GAP", inputs })).toBe("GAP(hole, [shaft], [unit])");
});
