import { CHARACTERISTICS } from "../../src/vocabulary/characteristics.ts";
import { measuredBy, ownCharacteristic } from "../../src/vocabulary/subjects.ts";

const named = (isIt: (one: (typeof CHARACTERISTICS)[string]) => boolean): string[] =>
  Object.entries(CHARACTERISTICS).flatMap(([name, one]) => (isIt(one) ? [name] : []));

// A difference of two sizes below 0 says that the parts do not fit, or that the wrong size is taken for the standard one.
test("what is worked out as the difference of two sizes may be negative, and so may depths and volumes with a sign", () => {
  expect(named(({ isNeverNegative }) => !isNeverNegative)).toEqual([
    ...["bore wear", "piston clearance", "pin clearance", "ring side clearance", "stem clearance"],
    ...["crankpin wear", "main journal wear", "bearing clearance", "main bearing clearance", "big end clearance"],
    ...["deck height", "squish", "piston volume"],
    ...["small end clearance", "lobe wear", "camshaft bearing clearance", "valve to piston"],
    // Read on an indicator from where it was set to 0.
    ...["main bore height", "face height", "valve gap at the top", "coil bind"],
    ...["guide interference", "seat insert interference", "pin interference", "liner interference", "valve opens", "valve closes"],
  ]);
});

// Common practice: holes and gaps wear larger, what runs in them smaller, and a worn engine holds less pressure.
test("holes, gaps and clearances wear larger, shafts, rings and pressures smaller; the others may go either way", () => {
  expect(named(({ wears }) => wears === "smaller")).toEqual([
    ...["piston skirt", "piston pin", "ring width", "valve stem", "crankpin", "main journal"],
    ...["compression pressure", "wet compression", "compression at standard air", "pressure held"],
    ...[
      "lobe height",
      "base circle",
      "lobe lift",
      "camshaft journal",
      "spring free length",
      "spring force",
      "crush",
      "main bearing crush",
      "big end crush",
      "rpk",
    ],
  ]);
  expect(named(({ wears }) => wears === undefined)).toEqual([
    ...["standard bore", "valve clearance", "deck height", "squish", "stroke", "chamber volume", "piston volume"],
    ...["compression ratio", "supply pressure"],
    // Housings are bored and caps filed, rods bent, shafts straightened, parts ground to one mass, faces skimmed, seats cut and springs shimmed.
    ...["main bearing housing", "big end housing", "rod bend", "rod twist"],
    ...["rod mass", "big end mass", "small end mass", "piston mass"],
    ...["crankshaft run-out", "camshaft run-out", "run-out", "installed height", "valve to piston", "head height", "block height"],
    // Mains are line-bored, surfaces run in and honed anew, springs shimmed, pressed parts loosened or renewed, chains stretched and adjusted.
    ...[
      "main bore alignment",
      "main bore height",
      "face height",
      "piston height",
      "valve gap at the top",
      "ra",
      "rz",
      "rk",
      "rvk",
      "peak material ratio",
      "valley material ratio",
      "cross-hatch angle",
      "coil bind",
      "guide interference",
      "seat insert interference",
      "pin interference",
      "liner interference",
    ],
    ...["valve opens", "valve closes"],
    // A content says nothing of a size.
    ...["iron", "chromium", "aluminium", "copper", "lead", "tin", "silicon"].map((element) => `${element} in the oil`),
  ]);
});

test.each([
  ["Ring end gap", "Top", "top ring end gap"],
  ["Ring gap, 2nd", "", "second ring end gap"],
  ["Side clearance", "oil ring", "oil ring side clearance"],
  ["Tappet clearance", "EX 2", "exhaust valve clearance"],
  ["Intake stem", "", "inlet valve stem"],
  ["Bore", "top thrust", "bore"],
  ["Main bearing clearance", "", "main bearing clearance"],
  ["Big end clearance", "", "big end clearance"],
  ["Flywheel runout", "rim", "flywheel runout"],
  ["Crank runout", "main 2", "crankshaft run-out"],
  ["Cam lobe height", "EX 2", "exhaust lobe height"],
  ["Valve spring load, intake", "", "inlet spring force"],
  ["Cylinder head warp", "", "head flatness"],
  ["Small end bush", "", "small end bore"],
  ["Blowby", "", "blow-by"],
])("%s at %s is %s", (characteristic, position, own) => {
  expect(ownCharacteristic(measuredBy(characteristic, position))).toBe(own);
});

test("a general word is one of those by which its characteristic is known", () => {
  for (const [name, { words, general = [] }] of Object.entries(CHARACTERISTICS)) expect(general.filter((word) => ![name, ...words].includes(word))).toEqual([]);
});
