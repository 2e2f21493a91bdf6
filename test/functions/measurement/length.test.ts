import fc from "fast-check";
import { lengthOf } from "../../../src/functions/measurement/length.ts";
import { ask, BLANKS, number } from "../ask.ts";

describe("cited values", () => {
  // NIST SP 811, appendix B: 1 in = 25.4 mm, 1 ft = 12 in = 304.8 mm, 1 mil (thou) = 0.0254 mm, exact.
  test.each([
    ["2 7/8 in", 73.025],
    ['2-7/8"', 73.025],
    ["2⅞″", 73.025],
    ["7/8 in", 22.225],
    ["½ in.", 12.7],
    ["2¼ in", 57.15],
    ["2¾ in", 69.85],
    ["2⅛ in", 53.975],
    ["2⅜ in", 60.325],
    ["2⅝ in", 66.675],
    ["2''", 50.8],
    ["2 ins", 50.8],
    ["63.5 micron", 0.0635],
    ["6′ 2″", 1879.6],
    ["73,0255 mm", 73.0255],
    ['.0025"', 0.0635],
    ["2.875 Inches", 73.025],
    ["2.5 thou", 0.0635],
    ["73.02 mm", 73.02],
    ["73.02MM", 73.02],
    ["73,02 mm", 73.02],
    ["0,025 mm", 0.025],
    ["1234,567 mm", 1234.567],
    ["7.302 cm", 73.02],
    ["63.5 µm", 0.0635],
    ["63.5 microns", 0.0635],
    ["25 millimetres", 25],
    ["1 m", 1000],
    ["6' 2 1/2\"", 1892.3],
    ["6 ft 2 in", 1879.6],
    ["-0.02 mm", -0.02],
    ["− 3 µm", -0.003],
    ["+ 3 mm", 3],
    ["2 thous", 0.0508],
    ["1 foot", 304.8],
    ["2 feet 1 inch", 635],
    ["25 micrometres", 0.025],
  ])("%s is %p mm", (typed, mm) => {
    expect(ask(lengthOf, typed, "mm")).toBe(mm);
  });

  test.each([
    ["in", 1],
    ["mm", 25.4],
    ["cm", 2.54],
    ["m", 0.0254],
    ["um", 25400],
    ["thou", 1000],
    ["ft", 0.083333333],
  ])("an inch wanted in %s is %p", (unit, value) => {
    expect(ask(lengthOf, "1 in", unit)).toBe(value);
  });
});

describe("identities", () => {
  const hundredths = fc.integer({ min: 1, max: 99_999 });

  test("what is typed in mm and wanted in mm is what was typed", () => {
    fc.assert(fc.property(hundredths, (n) => expect(ask(lengthOf, `${n / 100} mm`, "mm")).toBe(n / 100)));
  });

  test("a decimal comma with one or two decimals is read as the point is", () => {
    fc.assert(
      fc.property(hundredths, (n) => {
        const point = (n / 100).toFixed(2);
        expect(ask(lengthOf, `${point.replace(".", ",")} mm`, "mm")).toBe(ask(lengthOf, `${point} mm`, "mm"));
      }),
    );
  });

  test("a fraction and its decimal are the same length", () => {
    fc.assert(
      fc.property(fc.nat(20), fc.integer({ min: 1, max: 63 }), (whole, top) => {
        expect(number(lengthOf, `${whole} ${top}/64 in`, "in")).toBeCloseTo(whole + top / 64, 8);
      }),
    );
  });

  test("feet and inches add up", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.nat(11), (feet, inches) => {
        expect(ask(lengthOf, `${feet} ft ${inches} in`, "in")).toBe(12 * feet + inches);
      }),
    );
  });
});

describe("faults", () => {
  const sentence = (typed: string | number, said: string) => ({ code: "unfit", sentence: `LENGTH: text ${JSON.stringify(String(typed))}: ${said}` });

  test("a comma that may mark thousands is asked back", () => {
    expect(ask(lengthOf, "73,025 mm", "mm")).toEqual(sentence("73,025 mm", "the comma may be a decimal sign or mark thousands, type 73.025 or 73025"));
    expect(ask(lengthOf, "7,025 mm", "mm")).toEqual(sentence("7,025 mm", "the comma may be a decimal sign or mark thousands, type 7.025 or 7025"));
    expect(ask(lengthOf, "730,025 mm", "mm")).toEqual(sentence("730,025 mm", "the comma may be a decimal sign or mark thousands, type 730.025 or 730025"));
  });

  test("a comma and a point together are asked back", () => {
    expect(ask(lengthOf, "1,234.5 mm", "mm")).toEqual(sentence("1,234.5 mm", "it has more than one comma or point, type it with the decimal sign only"));
  });

  test("a number without a unit is not guessed at, as text or as a number", () => {
    const said = "the unit is missing, add one such as mm or in";
    expect(ask(lengthOf, "73.02", "mm")).toEqual(sentence("73.02", said));
    expect(ask(lengthOf, 73.02, "mm")).toEqual(sentence(73.02, said));
  });

  test("a unit that is none of length is named", () => {
    expect(ask(lengthOf, "5 kg", "mm")).toEqual(sentence("5 kg", "kg is no unit that engines are measured in, use mm, cm, m, um, in, thou or ft"));
  });

  test.each(["1 rod", "2 km", "3 miles", "5 yd", "4 chains", "7 nm", "2 angstrom", "1 li", "3 links", "5 Mil"])(
    "%s, in which no engine is measured, is asked about",
    (typed) => {
      const word = typed.split(" ")[1]!.toLowerCase();
      const said =
        word === "mil"
          ? "mil may mean a thousandth of an inch or a millimetre, type thou or mm"
          : `${word} is no unit that engines are measured in, use mm, cm, m, um, in, thou or ft`;
      expect(ask(lengthOf, typed, "mm")).toEqual(sentence(typed, said));
    },
  );

  test("a word that one shop takes for this and the next for that is asked about", () => {
    expect(ask(lengthOf, "10 mil", "mm")).toEqual(sentence("10 mil", "mil may mean a thousandth of an inch or a millimetre, type thou or mm"));
    expect(ask(lengthOf, "10 mils", "mm")).toEqual(sentence("10 mils", "mils may mean thousandths of an inch or millimetres, type thou or mm"));
    expect(ask(lengthOf, "2 tenths", "in")).toEqual(
      sentence("2 tenths", "tenths may mean ten-thousandths of an inch or tenths of a millimetre, type them in in or mm"),
    );
  });

  test("a top-heavy fraction is most likely a missing blank", () => {
    expect(ask(lengthOf, "27/8 in", "mm")).toEqual(sentence("27/8 in", "27/8 is not less than one, is a blank missing as in 2 7/8?"));
    expect(ask(lengthOf, "8/8 in", "mm")).toEqual(sentence("8/8 in", "8/8 is not less than one, is a blank missing as in 2 7/8?"));
  });

  test("a fraction over nothing is refused", () => {
    expect(ask(lengthOf, "1/0 in", "mm")).toEqual(sentence("1/0 in", "a fraction cannot have 0 below its line"));
  });

  test("a decimal with a fraction is refused", () => {
    expect(ask(lengthOf, "2.5 7/8 in", "mm")).toEqual(sentence("2.5 7/8 in", "a decimal and a fraction do not go together"));
    expect(ask(lengthOf, "2.5.1 7/8 in", "mm")).toEqual(sentence("2.5.1 7/8 in", "it has more than one comma or point, type it with the decimal sign only"));
  });

  test("two lengths that are not feet and inches are refused", () => {
    const said = "this is more than one length, only feet and then inches go together";
    expect(ask(lengthOf, "2 in 3 ft", "mm")).toEqual(sentence("2 in 3 ft", said));
    expect(ask(lengthOf, "73 mm 2 cm", "mm")).toEqual(sentence("73 mm 2 cm", said));
    expect(ask(lengthOf, "1 ft 2 ft", "mm")).toEqual(sentence("1 ft 2 ft", said));
    expect(ask(lengthOf, "6 ft 2 in 3 in", "mm")).toEqual(sentence("6 ft 2 in 3 in", said));
  });

  test.each(["worn", "in", ", mm", "mm 73"])("%s is no length", (typed) => {
    expect(ask(lengthOf, typed, "mm")).toEqual(sentence(typed, "no length is read here, type a number and its unit, such as 73.02 mm or 2 7/8 in"));
  });

  test("a unit wanted that is not offered is answered with those that are", () => {
    expect(ask(lengthOf, "73 mm", "yard")).toEqual({
      code: "not-a-choice",
      sentence: 'LENGTH: unit "yard" is not known: it must be one of mm, in, cm, m, um, thou, ft',
    });
  });

  test("in a batch the one bad element says so and the others compute", () => {
    expect(ask(lengthOf, [["73 mm"], ["73"]], "mm")).toEqual([[73], ['check: text "73": the unit is missing, add one such as mm or in']]);
  });
});

test("blank text or a blank unit leaves it blank", () => {
  for (const blank of BLANKS) {
    expect(ask(lengthOf, blank, "mm")).toBe("");
    expect(ask(lengthOf, "73 mm", blank)).toBe("");
  }
});
