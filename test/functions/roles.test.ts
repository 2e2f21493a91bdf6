import { NO_INPUTS } from "../../src/check/judge.ts";
import { isMeasuredInput, isOfEngine } from "../../src/core/define.ts";
import { specByName, specs } from "../../src/functions/index.ts";
import { CHARACTERISTICS } from "../../src/vocabulary/characteristics.ts";

const inputs = specs.flatMap((spec) => spec.inputs.map((input) => ({ spec, ...input, of: `${spec.name}.${input.name}` })));
const measured = inputs.filter(({ spec, param }) => isMeasuredInput(spec, param)).map(({ of }) => of);
const chosen = inputs.filter(({ param }) => param.role === "chosen").map(({ of }) => of);
const roleOf = (name: string) => specByName.get(name)!.role;

describe("what is measured and what is chosen", () => {
  test("readings and measured parts wear; standards, targets, steps and limits are chosen", () => {
    const parts = ["TAPER.readings", "PISTONCLEARANCE.skirt", "RINGGAPFILE.measured", "SHIMPLAN.clearance", "LEAKDOWN.held"];
    const wishes = ["BOREWEAR.standard", "RINGGAPFILE.target", "SHIMPLAN.least", "SHIMPLAN.step", "FINISHBORE.clearance", "REBOREPLAN.oversizes"];
    expect(measured).toEqual(expect.arrayContaining(parts));
    expect(chosen).toEqual(expect.arrayContaining(wishes));
    expect(measured.filter((of) => chosen.includes(of))).toEqual([]);
  });

  test("words, counts, switches and axes say how to calculate, the rule of a judgement by which, and are neither", () => {
    const options = inputs.filter(({ param }) => param.role === "option" || param.role === "rule");
    expect(options.map(({ of }) => of)).toEqual(inputs.filter(({ param }) => !param.takesAnyNumber).map(({ of }) => of));
  });

  test("what readings are given to in order to weigh them is not measured once more", () => {
    expect(measured.filter((of) => !isOfEngine(specByName.get(of.split(".")[0]!)!))).toEqual([]);
    for (const given of ["VERDICT.value", "REALCHANGE.before", "COMBINE.uncertainties"]) expect(measured).not.toContain(given);
  });
});

describe("what a function is", () => {
  test("each is one of five things", () => {
    const roles = ["measures", "describes", "decides", "judges", "assists"];
    expect(specs.filter(({ role }) => !roles.includes(role)).map(({ name }) => name)).toEqual([]);
  });

  test("what is decided, judged or told in words is no characteristic of the engine", () => {
    for (const name of [
      "REBORESIZE",
      "RINGGAPFILE",
      "SHIMSIZE",
      "HEADSKIM",
      "REGRINDSIZE",
      "REGRINDPLAN",
      "HEATFORFIT",
      "SPRINGHEIGHT",
      "MASSMATCH",
      "HONEANGLE",
    ])
      expect(roleOf(name)).toBe("decides");
    for (const name of ["VERDICT", "EXPLAIN", "MARGIN"]) expect(roleOf(name)).toBe("judges");
    for (const name of [
      "BORESUMMARY",
      "COMPRESSIONCHECK",
      "WETTEST",
      "BEARINGCLEARANCE",
      "RUNOUT",
      "SURFACE",
      "TIMINGAT",
      "VALVETOPISTON",
      "RODENDS",
      "OILRATE",
    ])
      expect(roleOf(name)).toBe("describes");
    for (const name of ["TAPER", "PISTONCLEARANCE", "COMPRESSIONRATIO", "LEAKDOWN", "CRUSH", "INTERFERENCE", "SHAFTWEAR", "DECKCLEARANCE", "FLATNESS"])
      expect(roleOf(name)).toBe("measures");
    for (const name of ["FLATNESSWITHIN", "LOBELIFT", "LOBEWEAR", "INSTALLEDHEIGHT", "BLOWBY", "COMPRESSIONATSTANDARD"]) expect(roleOf(name)).toBe("measures");
    for (const name of ["REALCHANGE", "CONFORMITY", "VERSION", "RATIOUNCERTAINTY"]) expect(roleOf(name)).toBe("assists");
  });

  test("what measures gives one value for each thing measured, from at least one measured input", () => {
    for (const spec of specs.filter(({ role }) => role === "measures")) {
      expect([spec.name, spec.returns.kind, spec.inputs.some(({ param }) => isMeasuredInput(spec, param))]).toEqual([
        spec.name,
        "value",
        // Worked out from a compression ratio that is itself chosen here.
        spec.name !== "CRANKINGPRESSURE",
      ]);
    }
  });

  test("what judges is given a value and limits, each once, and nothing that a judgement does not take", () => {
    const judging = specs.filter(({ role }) => role === "judges");
    for (const { name, inputs: given } of judging) {
      const roles = given.map(({ param }) => param.role);
      expect([name, roles.filter((role) => !(role in NO_INPUTS))]).toEqual([name, []]);
      expect(new Set(roles).size).toBe(roles.length);
      expect(roles).toEqual(expect.arrayContaining(["value", "lower", "upper"]));
    }
  });
});

test("what readings of a layout come to, and what they are, are characteristics that the vocabulary knows; each follows from one function", () => {
  const derived = specs.flatMap(({ name, derives = [], role }) => derives.map((one) => ({ name, role, ...one })));
  expect(derived.flatMap(({ characteristic, from }) => [characteristic, ...from]).filter((name) => !(name in CHARACTERISTICS))).toEqual([]);
  expect(new Set(derived.map(({ characteristic }) => characteristic)).size).toBe(derived.length);
  expect(derived.filter(({ role }) => role !== "measures")).toEqual([]);
  expect(derived.map(({ name, characteristic }) => `${name}: ${characteristic}`)).toEqual(
    expect.arrayContaining(["TAPER: taper", "CLEARANCE: pin clearance", "CLEARANCE: stem clearance", "COMPRESSIONSPREAD: compression spread"]),
  );
});

describe("what is drawn", () => {
  test("a drawing names params that the function has", () => {
    for (const { name, draws, params } of specs) {
      const names = Object.entries(draws ?? {}).flatMap(([part, named]) => (part === "kind" || part === "resultIs" || part === "judges" ? [] : [named]));
      expect([name, Object.keys(params)]).toEqual([name, expect.arrayContaining(names)]);
    }
  });

  test("every function of the cylinder that takes the readings of a bore says how they are drawn; those of a journal are not drawn", () => {
    const ofBores = specs.filter(({ group, inputs: given }) => group === "cylinder" && given.some(({ param }) => param.broadcastKind === "bore"));
    expect(ofBores.length).toBeGreaterThan(5);
    for (const { name, draws } of ofBores) expect([name, draws]).toEqual([name, expect.objectContaining({ kind: "bore" })]);
  });

  test.each([
    ["bore", ["BORESUMMARY", "BOREWEAR", "OUTOFROUND", "PISTONCLEARANCE", "REBOREPLAN", "REBORESIZE", "TAPER"]],
    ["roundness", ["ROUNDNESS"]],
    ["runout", ["RUNOUT"]],
    ["face", ["FLATNESS", "FLATNESSWITHIN"]],
    ["surface", ["SURFACE"]],
    ["compression", ["COMPRESSIONCHECK", "COMPRESSIONSPREAD", "WETTEST"]],
    ["change", ["ENNUMBER", "REALCHANGE"]],
  ])("drawn as %s", (kind, names) => {
    expect(specs.filter(({ draws }) => draws?.kind === kind).map(({ name }) => name)).toEqual(expect.arrayContaining(names));
  });
});
