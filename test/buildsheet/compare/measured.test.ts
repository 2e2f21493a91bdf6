import { isCharacteristic, isMeasured, isSetting } from "../../../src/buildsheet/compare/measured.ts";
import { specByName, specs } from "../../../src/functions/index.ts";

const inputsWhere = (holds: (spec: (typeof specs)[number], name: string) => boolean) =>
  specs.flatMap((spec) => spec.inputs.filter(({ name }) => holds(spec, name)).map(({ name }) => `${spec.name}.${name}`));

describe("what can wear and what is chosen", () => {
  test("readings and measured parts wear; standards, targets, steps and limits are chosen", () => {
    const measured = inputsWhere(isMeasured);
    expect(measured).toEqual(
      expect.arrayContaining(["TAPER.readings", "PISTONCLEARANCE.skirt", "RINGGAPFILE.measured", "SHIMPLAN.clearance", "LEAKDOWN.held"]),
    );
    for (const chosen of ["BOREWEAR.standard", "RINGGAPFILE.target", "SHIMPLAN.least", "SHIMPLAN.step", "FINISHBORE.clearance", "REBOREPLAN.oversizes"]) {
      expect(measured).not.toContain(chosen);
    }
  });

  test("choices of words, counts and axes are neither", () => {
    for (const { spec, name } of specs.flatMap((one) => one.inputs.map((input) => ({ spec: one, ...input })))) {
      if (["count", "text", "choice", "truth"].includes(spec.inputs.find((input) => input.name === name)!.param.quantity))
        expect(isMeasured(spec, name)).toBe(false);
    }
  });

  test("what is decided by a function is no characteristic of the engine", () => {
    for (const name of ["REBORESIZE", "RINGGAPFILE", "SHIMSIZE", "HEADSKIM", "VERDICT", "REALCHANGE"])
      expect(isCharacteristic(specByName.get(name)!)).toBe(false);
    for (const name of ["TAPER", "PISTONCLEARANCE", "COMPRESSIONRATIO", "LEAKDOWN"]) expect(isCharacteristic(specByName.get(name)!)).toBe(true);
  });

  test("every setting is an input of some function", () => {
    expect(inputsWhere(isSetting).length).toBeGreaterThan(20);
  });
});
