import { checkWorkbook } from "../../src/check/check-workbook.ts";
import { reportInput } from "../../src/report/gather/workbook.ts";
import { placeName } from "../../src/workbook/address.ts";
import { fill, outside } from "./judged.ts";
import { Made } from "./made.ts";

// Readings and limits are invented; what they come to is worked out by hand beside them.

const CHOICES = { cylinders: 2, heights: 2, axes: 2, valves: 2 };

test("rods: housings, small ends, side clearance, bend and twist are judged by the shop's limits", async () => {
  const made = await Made.of(CHOICES);
  await fill(made, "RodReadings", {
    "Big end housing along": [48.012, 48.015],
    "Big end housing across": [48.004, 47.985],
    "Small end bore": [20.012, 20.03],
    "Pin in it": [20, 19.995],
    "Rod side clearance": [0.2, 0.4],
    "Rod bend": [0, 0.06],
    "Rod twist": [0.02, 0.05],
  });
  await made.limit("Big end housing", 48, 48.016);
  await made.limit("Big end housing out-of-round", null, 0.02);
  await made.limit("Small end clearance", 0.005, 0.03);
  await made.limit("Rod side clearance", 0.1, 0.35);
  await made.limit("Rod bend", null, 0.05);
  await made.limit("Rod twist", null, 0.05);
  const column = (heading: string) => made.column("RodReadings", heading);
  // 48.012 − 48.004 and 48.015 − 47.985; 20.012 − 20 and 20.03 − 19.995.
  expect(await column("Big end housing out-of-round")).toEqual([0.008, 0.03]);
  expect(await column("Small end clearance")).toEqual([0.012, 0.035]);
  expect(await column("Big end housing across verdict")).toEqual(["within", "under"]);
  expect(await column("Rod twist verdict")).toEqual(["within", "within"]);
  expect(await outside(made)).toEqual([
    "Cylinder 2, Big end housing across | 47.985 is under the lower limit 48 by 0.015",
    "Cylinder 2, Big end housing out-of-round | 0.03 is over the upper limit 0.02 by 0.01",
    "Cylinder 2, Rod bend | 0.06 is over the upper limit 0.05 by 0.01",
    "Cylinder 2, Rod side clearance | 0.4 is over the upper limit 0.35 by 0.05",
    "Cylinder 2, Small end clearance | 0.035 is over the upper limit 0.03 by 0.005",
  ]);
});

test("masses: both ends of a rod, and what comes off each set down to its lightest, less the tolerance that is typed", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 3 });
  await fill(made, "RodMasses", {
    "Piston mass": [412, 409.5, 410.2],
    "Rod mass": [612, 609.5],
    "Big end mass": [430, 428.6],
    "Small end mass weighed": [181.4],
  });
  // The second small end is the rest of its rod, 609.5 − 428.6; the first was weighed, and 612 − 430 − 181.4 is missing.
  expect(await made.column("RodMasses", "Small end mass")).toEqual([181.4, 180.9, ""]);
  expect(await made.column("RodMasses", "Missing between them")).toEqual([0.6, "", ""]);
  expect(await made.column("RodMasses", "Off the piston")).toEqual([2.5, 0, 0.7]);
  expect(await made.column("RodMasses", "Off the big end")).toEqual([1.4, 0, ""]);
  expect(await made.column("RodMasses", "Off the small end")).toEqual([0.5, 0, ""]);
  await made.item("Mass tolerance", 1);
  expect(await made.column("RodMasses", "Off the piston")).toEqual([1.5, 0, 0]);
  expect(await outside(made)).toEqual([]);
});

test("camshaft: lift, wear from the standard lift of its side, bearings, run-out and end float; two camshafts for more than two valves", async () => {
  const made = await Made.of(CHOICES);
  await made.item("Standard lobe lift, inlet", 6.4);
  await made.item("Standard lobe lift, exhaust", 6.3);
  await fill(made, "CamLobes", { "Lobe height": [38.4, 38.25, 38.3, 38.3], "Base circle": [32, 32, 32, 32] });
  await fill(made, "CamBearings", {
    "Camshaft bearing upright": [30.05, 30.06],
    "Camshaft bearing across": [30.06, 30.07],
    "Camshaft journal upright": [29.99, 29.95],
    "Camshaft journal across": [29.98, 29.94],
  });
  await fill(made, "Camshafts", { "Camshaft run-out": [0.04], "Camshaft end float": [0.12] });
  for (const side of ["inlet", "exhaust"]) await made.limit(`Lobe wear, ${side}`, null, 0.08);
  await made.limit("Lobe height, inlet", 38.35, null);
  await made.limit("Camshaft bearing clearance", 0.03, 0.1);
  await made.limit("Camshaft run-out", null, 0.03);
  await made.limit("Camshaft end float", 0.05, 0.2);
  expect(await made.column("CamLobes", "Lobe lift")).toEqual([6.4, 6.25, 6.3, 6.3]);
  // Inlet, exhaust, inlet, exhaust: 6.4 − 6.4, 6.3 − 6.25, 6.4 − 6.3, 6.3 − 6.3.
  expect(await made.column("CamLobes", "Lobe wear")).toEqual([0, 0.05, 0.1, 0]);
  // 30.05 − 29.99 and 30.06 − 29.95; the third bearing is not measured.
  expect(await made.column("CamBearings", "Camshaft bearing clearance")).toEqual([0.06, 0.11, ""]);
  expect(await made.column("Camshafts", "Camshaft end float verdict")).toEqual(["within"]);
  expect(await outside(made)).toEqual([
    "Camshaft 1, Bearing 2, Camshaft bearing clearance | 0.11 is over the upper limit 0.1 by 0.01",
    "Camshaft 1, Camshaft run-out | 0.04 is over the upper limit 0.03 by 0.01",
    "Cylinder 2, Inlet, Lobe height | 38.3 is under the lower limit 38.35 by 0.05",
    "Cylinder 2, Inlet, Lobe wear | 0.1 is over the upper limit 0.08 by 0.02",
  ]);
  expect(await (await Made.of({ ...CHOICES, valves: 4 })).column("CamBearings", "Camshaft")).toEqual([1, 1, 1, 2, 2, 2]);
});

test("guides and seats: taper of both, clearance where it is least and most, and nothing before all six are read", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 1 });
  await fill(made, "GuidesAndSeats", {
    "Guide top": [7.03, 7.02],
    "Guide middle": [7.01, 7.015],
    "Guide bottom": [7.05, 7.02],
    "Stem top": [6.98, 6.97],
    "Stem middle": [6.975, 6.97],
    "Stem bottom": [6.98],
    "Seat width": [1.4, 2.1],
    "Seat run-out": [0.02, 0.06],
  });
  for (const side of ["inlet", "exhaust"]) {
    await made.limit(`Guide taper, ${side}`, null, 0.03);
    await made.limit(`Stem clearance, ${side}`, 0.02, 0.06);
    await made.limit(`Seat width, ${side}`, 1.2, 1.8);
    await made.limit(`Seat run-out, ${side}`, null, 0.05);
  }
  const column = (heading: string) => made.column("GuidesAndSeats", heading);
  // 7.05 − 7.01 and 7.02 − 7.015; 7.01 − 6.98 at the least, 7.05 − 6.975 at the most.
  expect(await column("Guide taper")).toEqual([0.04, 0.005]);
  expect(await column("Stem taper")).toEqual([0.005, ""]);
  expect(await column("Stem clearance, tightest")).toEqual([0.03, ""]);
  expect(await column("Stem clearance, loosest")).toEqual([0.075, ""]);
  expect(await outside(made)).toEqual([
    "Cylinder 1, Exhaust, Seat run-out | 0.06 is over the upper limit 0.05 by 0.01",
    "Cylinder 1, Exhaust, Seat width | 2.1 is over the upper limit 1.8 by 0.3",
    "Cylinder 1, Inlet, Guide taper | 0.04 is over the upper limit 0.03 by 0.01",
    "Cylinder 1, Inlet, Stem clearance, loosest | 0.075 is over the upper limit 0.06 by 0.015",
  ]);
});

test("springs: installed height with and without shims, and the force there; in inches and pounds-force as well", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 1 });
  await fill(made, "ValveSprings", {
    "Spring free length": [48.2, 46.9],
    "Height measured": [40.6, 40.2],
    Shims: [0.6],
    "Force in the tester": [250, 240],
    "At length": [40, 40],
    "Spring rate": [30, 30],
  });
  await made.limit("Spring free length, exhaust", 47.5, null);
  await made.limit("Spring force, inlet", 230, 270);
  await made.limit("Spring force, exhaust", 240, 270);
  // 40.6 − 0.6; 250 + 30 × (40 − 40); 240 + 30 × (40 − 40.2).
  expect(await made.column("ValveSprings", "Installed height")).toEqual([40, 40.2]);
  expect(await made.column("ValveSprings", "Spring force")).toEqual([250, 234]);
  expect(await outside(made)).toEqual([
    "Cylinder 1, Exhaust, Spring force | 234 is under the lower limit 240 by 6",
    "Cylinder 1, Exhaust, Spring free length | 46.9 is under the lower limit 47.5 by 0.6",
  ]);
  const inch = await Made.of({ ...CHOICES, cylinders: 1, unit: "in" });
  await fill(inch, "ValveSprings", { "Height measured": [1.6], "Force in the tester": [56], "At length": [1.5], "Spring rate": [170] });
  // 56 + 170 × (1.5 − 1.6).
  expect((await inch.column("ValveSprings", "Spring force"))[0]).toBe(39);
  expect(await inch.column("LimitList", "Unit")).toContain("lbf");
});

test("faces: flatness once all of a face is read, over a span, skim taken and left", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 1 });
  // Three places along and three across: a face that is level but for its middle, 0.05 high.
  await fill(made, "FaceHeights", { "Head left": [0, 0.01, 0], "Head middle": [0.02, 0.05, 0.02], "Head right": [0, 0.01] });
  expect(await made.column("Faces", "Flatness")).toEqual(["", ""]);
  await made.type("FaceHeights", "Head right", 2, 0);
  // The same nine heights as the example of FLATNESS: 0.05, its level plane.
  expect(await made.column("Faces", "Flatness")).toEqual([0.05, ""]);
  expect(await made.column("Faces", "Flatness over a span")).toEqual(["", ""]);
  await made.item("Places of a span", 3);
  expect(await made.column("Faces", "Flatness over a span")).toEqual([0.05, ""]);
  await made.item("Standard head height", 95);
  await fill(made, "Faces", { Height: [94.8] });
  await made.limit("Head flatness", null, 0.04);
  await made.limit("Head height", 94.7, null);
  expect(await made.column("Faces", "Skim taken")).toEqual([0.2, ""]);
  expect(await made.column("Faces", "Skim left")).toEqual([0.1, ""]);
  expect(await made.column("Faces", "Height verdict")).toEqual(["within", ""]);
  expect(await outside(made)).toEqual(["Head, Flatness | 0.05 is over the upper limit 0.04 by 0.01"]);
});

test("deck clearance from the parts, and the least gap between valve and piston with its angle", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 2 });
  await made.item("Stroke", 74);
  await fill(made, "DeckStack", { "Block height": [205, 204.6], Rod: [129, 129.1], "Piston height": [38.8, 38.8] });
  await made.limit("Deck clearance", -0.1, 0.4);
  // 205 − 37 − 129 − 38.8 and 204.6 − 37 − 129.1 − 38.8.
  expect(await made.column("DeckStack", "Deck clearance")).toEqual([0.2, -0.3]);
  await made.item("Stroke", 80);
  await made.fill("DeckStack", "Block height", [208, 207.6]);
  await made.item("Rod length", 130);
  // The readings of VALVETOPISTON's own example, with one between each: 0.276046 at 10 degrees.
  await made.fill("ValveLifts", "Lift, inlet", [0.2, 0.5, 0.9, 1.4, 2.1, 2.5, 4, 4.8, 6.2]);
  await fill(made, "ValveGaps", { "Gap at the top": [3.5, 3.5], "Angle of the stem": [12] });
  await made.limit("Valve to piston, inlet", 0.5, null);
  expect(await made.column("ValveGaps", "Valve to piston")).toEqual([0.276046, ""].map((cell) => (typeof cell === "number" ? expect.closeTo(cell, 5) : cell)));
  expect(await made.column("ValveGaps", "At angle")).toEqual([10, ""]);
  expect((await outside(made)).map((line) => line.slice(0, 60))).toEqual([
    "Cylinder 2, Deck clearance | -0.3 is under the lower limit -",
    expect.stringContaining("Valve to piston | 0.276"),
  ]);
});

test("a result judged with a gauge carries the U of all readings that it is worked out from", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 1 });
  await made.type("Gauges", "Gauge id", 0, "M1");
  await made.type("Gauges", "U of the gauge", 0, 0.01);
  for (const what of ["Head, block, rod and piston heights", "Guides"]) await made.type("Measurements", "Gauge", made.rowOf("Measurements", what), "M1");
  const of = async (name: string) => (await made.column("ResultUncertainties", "U of the result"))[made.rowOf("ResultUncertainties", name)];
  // The root of three times 0.01², of twice 0.01²; nothing where the stems have no gauge yet.
  expect(await of("Deck clearance")).toBeCloseTo(0.01 * Math.sqrt(3), 9);
  expect(await of("Guide taper")).toBeCloseTo(0.01 * Math.SQRT2, 9);
  expect(await of("Stem clearance")).toBe("");
});

test("what is half measured is named at its blank, and what is not begun is not", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 1 });
  await made.item("Stroke", 74);
  await made.item("Rod length", 129);
  const missing = async () => {
    const { findings } = checkWorkbook(await made.host.read());
    return findings.filter(({ kind, cell }) => kind === "missing reading" && cell.sheet !== "Bores").map(({ cell }) => placeName(cell));
  };
  expect(await missing()).toEqual([]);
  await made.fill("DeckStack", "Rod", [129]);
  await made.fill("RodReadings", "Small end bore", [20.01]);
  await made.fill("GuidesAndSeats", "Guide top", [7.01]);
  expect((await missing()).sort()).toEqual(
    [
      made.at("DeckStack", "Block height"),
      made.at("DeckStack", "Piston height"),
      made.at("RodReadings", "Pin in it"),
      made.at("GuidesAndSeats", "Guide middle"),
      made.at("GuidesAndSeats", "Guide bottom"),
    ]
      .map(placeName)
      .sort(),
  );
});

// A digit apart: 48 and 40, as mains and crankpins of one crankshaft may well be.
test("big ends of 40 are not taken for mistyped mains of 48, nor one for the other's journals", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 3 });
  await fill(made, "MainBearings", {
    ...{ "Main bearing bore upright": [48.05, 48.052, 48.051, 48.05], "Main bearing bore across": [48.052, 48.054, 48.053, 48.051] },
    ...{ "Main journal upright": [47.992, 47.99, 47.971, 47.991], "Main journal across": [47.99, 47.988, 47.969, 47.99] },
  });
  await fill(made, "BigEnds", {
    ...{ "Big end bore upright": [40.048, 40.05, 40.049], "Big end bore across": [40.05, 40.052, 40.05] },
    ...{ "Crankpin upright": [39.988, 39.951, 39.986], "Crankpin across": [39.986, 39.924, 39.985] },
  });
  expect(await outside(made)).toEqual([]);
  // A mistyped one among its own kind is still asked about.
  await made.type("MainBearings", "Main bearing bore across", 1, 84.054);
  const { findings } = checkWorkbook(await made.host.read());
  expect(findings.filter(({ kind }) => kind === "likely slip").map(({ cell }) => placeName(cell))).toEqual([
    placeName(made.at("MainBearings", "Main bearing bore across", 1)),
  ]);
});

test("guides and big ends are not taken for mistyped bores, nor bores for them", async () => {
  const made = await Made.of(CHOICES);
  for (const heading of ["Top thrust", "Top pin", "Bottom thrust", "Bottom pin"]) await made.fill("BoreReadings", heading, [73.01, 73.02]);
  await fill(made, "RodReadings", { "Big end housing along": [48.01, 48.012], "Big end housing across": [48.004, 48.01] });
  for (const height of ["top", "middle", "bottom"])
    await fill(made, "GuidesAndSeats", { [`Guide ${height}`]: [7.03, 8.02, 7.02, 8.03], [`Stem ${height}`]: [6.98, 7.97, 6.98, 7.98] });
  await fill(made, "CamLobes", { "Lobe height": [38.4, 38.25, 38.3, 38.3], "Base circle": [32, 32, 32, 32] });
  expect(await outside(made)).toEqual([]);
});

test("guides and housings have a taper and are drawn as no cylinder", async () => {
  const made = await Made.of({ ...CHOICES, cylinders: 1 });
  for (const heading of ["Top thrust", "Top pin", "Bottom thrust", "Bottom pin"]) await made.fill("BoreReadings", heading, [73.01]);
  for (const height of ["top", "middle", "bottom"]) await fill(made, "GuidesAndSeats", { [`Guide ${height}`]: [7.03, 8.02] });
  await fill(made, "RodReadings", { "Big end housing along": [48.01], "Big end housing across": [48.004] });
  const { content } = reportInput(await made.host.read());
  expect(content.bores.map(({ place }) => place)).toEqual(["Bores!B4:E4"]);
});
