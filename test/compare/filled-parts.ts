/** A sheet of Set up filled: gauges with their U by the rows of the table of what was measured, readings by table and heading, and what U each column then has. */
export interface FilledPart {
  gauges: Readonly<Record<string, number>>;
  readings: Readonly<Record<string, Readonly<Record<string, readonly number[]>>>>;
  items?: Readonly<Record<string, number>>;
  /** Expanded, k = 2: of a reading that of its own gauge, of a result by JCGM 100:2008, 5.1.2 (squares add). */
  U: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

const both = (...sizes: readonly number[]): number[] => [...sizes, ...sizes];
const root = (...parts: readonly number[]): number => Math.hypot(...parts);
const ANGLES = [0, 45, 90, 135, 180, 225, 270, 315].map((angle) => `At ${angle}° (mm)`);
/** Lifts of a valve from shut to shut. */
const LIFTS = [0, 0.5, 1.5, 2.8, 4, 5.2, 6, 6.4, 6, 5.2, 4, 2.8, 1.5, 0.5, 0];
const from = (start: number): number[] => LIFTS.map((_, i) => start + 20 * i);
const FACE = [0, 0.01, 0.02, 0.01, 0];
const FACES = ["Head left", "Head middle", "Head right", "Deck left", "Deck middle", "Deck right"];

/** Every gauge has a U of its own, so that a reading tells by its U which one measured it. All sizes are invented. */
export const PARTS: Readonly<Record<string, FilledPart>> = {
  Crankshaft: {
    gauges: {
      "Bearing bores": 0.003,
      "Crankshaft journals": 0.004,
      "Crankshaft end float": 0.01,
      "Heights of the main bores": 0.005,
      "Crankshaft run-out": 0.002,
      "Shell ends and cap gaps": 0.007,
    },
    items: { "Standard main journal": 50, "Standard crankpin": 40 },
    readings: {
      MainBearings: {
        ...{ "Main bearing bore upright": [50.05, 50.051, 50.052], "Main bearing bore across": [50.05, 50.051, 50.052] },
        ...{ "Main journal upright": [49.99, 49.991, 49.992], "Main journal across": [49.99, 49.991, 49.992] },
      },
      BigEnds: {
        ...{ "Big end bore upright": [40.05, 40.051], "Big end bore across": [40.05, 40.051], "Crankpin upright": [39.99, 39.991] },
        "Crankpin across": [39.99, 39.991],
      },
      CrankshaftEndFloat: { "End float": [0.15] },
      CrankshaftRunOut: Object.fromEntries(ANGLES.map((angle, i) => [angle, [[0, 0.01, 0.02, 0.01, 0, -0.01, -0.02, -0.01][i]!]])),
      MainBoreHeights: { "Height of the bore": [0, 0.01, 0] },
      BearingCrush: { "Gap under the cap (mm)": [0.1, 0.11, 0.12, 0.1, 0.11] },
    },
    U: {
      MainBearings: {
        ...{ "Main bearing bore upright": 0.003, "Main bearing bore across": 0.003, "Main journal upright": 0.004, "Main journal across": 0.004 },
        ...{ "Main bearing clearance": root(0.003, 0.004), "Main journal wear": 0.004 },
      },
      BigEnds: {
        ...{ "Big end bore upright": 0.003, "Big end bore across": 0.003, "Crankpin upright": 0.004, "Crankpin across": 0.004 },
        ...{ "Big end clearance": root(0.003, 0.004), "Crankpin wear": 0.004 },
      },
      CrankshaftEndFloat: { "End float": 0.01 },
      CrankshaftRunOut: { ...Object.fromEntries(ANGLES.map((angle) => [angle, 0.002])), "Crankshaft run-out": root(0.002, 0.002) },
      MainBoreAlignment: { "Main bore alignment": root(0.005, 0.005) },
      BearingCrush: { "Gap under the cap (mm)": 0.007, Crush: 0.007 / Math.PI },
    },
  },
  Rods: {
    gauges: { "Rod bores": 0.003, "Pins in the small ends": 0.002, "Rod side clearance": 0.02, "Rod bend and twist": 0.01 },
    readings: {
      RodReadings: {
        ...{ "Big end housing along": [48.012, 48.013], "Big end housing across": [48.004, 48.005], "Small end bore": [20.012, 20.013] },
        ...{ "Pin in it": [20, 19.999], "Rod side clearance": [0.2, 0.21], "Rod bend": [0.01, 0.02], "Rod twist": [0.02, 0.03] },
      },
    },
    U: {
      RodReadings: {
        ...{ "Big end housing along": 0.003, "Big end housing across": 0.003, "Small end bore": 0.003, "Pin in it": 0.002 },
        ...{ "Rod side clearance": 0.02, "Rod bend": 0.01, "Rod twist": 0.01 },
        ...{ "Big end housing out-of-round": root(0.003, 0.003), "Small end clearance": root(0.003, 0.002) },
      },
    },
  },
  Camshaft: {
    gauges: {
      ...{ "Cam lobes": 0.01, "Camshaft bearings": 0.003, "Camshaft journals": 0.004, "Camshaft run-out and end float": 0.006 },
      ...{ "Crank angles": 1, "Lifts for timing": 0.02 },
    },
    items: { "Standard lobe lift, inlet": 6.5, "Standard lobe lift, exhaust": 6.5 },
    readings: {
      CamLobes: { "Lobe height": both(38.4, 38.41), "Base circle": both(32, 32) },
      CamBearings: {
        ...{ "Camshaft bearing upright": [30.05, 30.051, 30.052], "Camshaft bearing across": [30.05, 30.051, 30.052] },
        ...{ "Camshaft journal upright": [29.99, 29.991, 29.992], "Camshaft journal across": [29.99, 29.991, 29.992] },
      },
      Camshafts: { "Camshaft run-out": [0.02], "Camshaft end float": [0.1] },
      TimingLifts: { "Crank angle, inlet": from(320), "Lift, inlet": LIFTS, "Crank angle, exhaust": from(120), "Lift, exhaust": LIFTS },
      ValveTiming: { "Checking lift": [1, 1] },
    },
    U: {
      CamLobes: { "Lobe height": 0.01, "Base circle": 0.01, "Lobe lift": root(0.01, 0.01), "Lobe wear": root(0.01, 0.01) },
      CamBearings: {
        ...{ "Camshaft bearing upright": 0.003, "Camshaft bearing across": 0.003, "Camshaft journal upright": 0.004, "Camshaft journal across": 0.004 },
        "Camshaft bearing clearance": root(0.003, 0.004),
      },
      Camshafts: { "Camshaft run-out": 0.006, "Camshaft end float": 0.006 },
      TimingLifts: { "Lift, inlet": 0.02, "Lift, exhaust": 0.02 },
    },
  },
  "Guides and seats": {
    gauges: { Guides: 0.003, Stems: 0.002, Seats: 0.02, "Press fits": 0.004 },
    readings: {
      GuidesAndSeats: {
        ...{ "Guide top": both(7.05, 7.06), "Guide middle": both(7.04, 7.05), "Guide bottom": both(7.03, 7.04) },
        ...{ "Stem top": both(6.97, 6.96), "Stem middle": both(6.98, 6.97), "Stem bottom": both(6.99, 6.98) },
        ...{ "Seat width": both(1.4, 1.6), "Seat run-out": both(0.03, 0.04) },
      },
      PressFits: { "Outside diameter": [30.05, 30.06], "Hole for it": [30, 30] },
    },
    U: {
      GuidesAndSeats: {
        ...{ "Guide top": 0.003, "Guide middle": 0.003, "Guide bottom": 0.003, "Stem top": 0.002, "Stem middle": 0.002, "Stem bottom": 0.002 },
        ...{ "Seat width": 0.02, "Seat run-out": 0.02, "Guide taper": root(0.003, 0.003), "Stem taper": root(0.002, 0.002) },
        ...{ "Stem clearance, tightest": root(0.003, 0.002), "Stem clearance, loosest": root(0.003, 0.002) },
      },
      PressFits: { "Outside diameter": 0.004, "Hole for it": 0.004, Interference: root(0.004, 0.004) },
    },
  },
  Springs: {
    gauges: { "Spring lengths and heights": 0.1, "Spring forces": 4 },
    readings: {
      ValveSprings: {
        ...{ "Spring free length": both(48, 48.1), "Height measured": both(40.6, 40.7), Shims: both(0.6, 0.5), "Force in the tester": both(250, 251) },
        ...{ "At length": both(40, 40), "Spring rate": both(30, 30), "Valve lift": both(8, 8), "Solid length": both(28, 28) },
      },
    },
    U: {
      ValveSprings: {
        ...{ "Spring free length": 0.1, "Height measured": 0.1, "Force in the tester": 4, "At length": 0.1, "Valve lift": 0.1, "Solid length": 0.1 },
        // Of a force 4, and of three lengths 30 × 0.1 each.
        ...{ "Installed height": root(0.1, 0.1), "Coil bind": root(0.1, 0.1, 0.1, 0.1), "Spring force": root(4, 3, 3, 3) },
      },
    },
  },
  Faces: {
    gauges: { "Face heights": 0.01, "Head, block, rod and piston heights": 0.02, "Valve lifts and gaps": 0.05 },
    items: { Stroke: 74, "Standard head height": 110.1, "Standard block height": 205.1, "Rod length": 129, "Places of a span": 3 },
    readings: {
      FaceHeights: Object.fromEntries(FACES.map((face) => [face, FACE])),
      Faces: { Height: [110, 205] },
      DeckStack: { "Block height": [205, 205], Rod: [129, 129], "Piston height": [38.8, 38.9] },
      ValveLifts: {
        Angle: [-40, -30, -20, -10, 0, 10, 20, 30, 40],
        ...{ "Lift, inlet": [0, 0.2, 0.5, 1.2, 2.1, 3.5, 5, 6.2, 7], "Lift, exhaust": [7, 6.2, 5, 3.5, 2.1, 1.2, 0.5, 0.2, 0] },
      },
      ValveGaps: { "Gap at the top": [3.5, 3.6], "Angle of the stem": [12, 12] },
    },
    U: {
      FaceHeights: Object.fromEntries(FACES.map((face) => [face, 0.01])),
      Faces: { Height: 0.02, Flatness: root(0.01, 0.01), "Flatness over a span": root(0.01, 0.01) },
      DeckStack: { "Block height": 0.02, Rod: 0.02, "Piston height": 0.02, "Deck clearance": root(0.02, 0.02, 0.02) },
      ValveLifts: { "Lift, inlet": 0.05, "Lift, exhaust": 0.05 },
      ValveGaps: { "Gap at the top": 0.05, "Valve to piston": root(0.05, 0.05) },
    },
  },
  Surface: {
    gauges: { "Bore surface, roughness": 0.03, "Bore surface, material ratios": 1.5 },
    readings: {
      BoreSurface: {
        ...{ Ra: [0.5, 0.6], Rz: [4.1, 4.3], Rk: [1.1, 1.2], Rpk: [0.2, 0.3], Rvk: [1.5, 1.6] },
        ...{ "Peak material ratio": [6, 7], "Valley material ratio": [78, 80] },
      },
    },
    U: {
      BoreSurface: { Ra: 0.03, Rz: 0.03, Rk: 0.03, Rpk: 0.03, Rvk: 0.03, "Peak material ratio": 1.5, "Valley material ratio": 1.5 },
    },
  },
  "Oil and blow-by": {
    gauges: { "Gas through the breather": 5, "Oil added": 0.01, "Oil samples": 2 },
    readings: {
      BlowBy: { "Hours run": [100, 300, 500], "Gas measured": [60, 70, 80], Minutes: [2, 2, 2] },
      OilAdded: { "Hours at the mark": [100, 150, 200, 260], "Oil added": [4, 0.2, 0.25, 0.36] },
      OilSamplesTaken: { "Hours on the oil": [100, 50] },
      OilSamples: { Content: [41, 3, 8, 21, 4, 1, 15, 101, 2, 6, 11, 2, 1, 10] },
    },
    U: {
      BlowBy: { "Gas measured": 5, "Blow-by": (60 * 5) / 2 },
      OilAdded: { "Oil added": 0.01 },
      // Three measures in 160 hours.
      OilUse: { "Oil use": root(0.01, 0.01, 0.01) / 160 },
      OilSamples: { Content: 2 },
    },
  },
};
