/** Where on a part a reading is taken: heights and axes of a bore, which ring, which valve. */
export const POSITION_WORDS: Readonly<Record<string, { kind: "height" | "axis" | "place"; words: readonly string[] }>> = {
  top: { kind: "height", words: ["tdc"] },
  "upper middle": { kind: "height", words: ["upper mid"] },
  upper: { kind: "height", words: [] },
  middle: { kind: "height", words: ["mid", "centre", "center", "middle of stroke"] },
  "lower middle": { kind: "height", words: ["lower mid"] },
  lower: { kind: "height", words: [] },
  bottom: { kind: "height", words: ["bot", "btm", "bdc"] },
  thrust: { kind: "axis", words: ["across", "transverse", "thrust side", "thrust axis", "across crank", "thr"] },
  pin: { kind: "axis", words: ["along", "longitudinal", "axial", "pin axis", "along crank", "fore and aft", "fore aft"] },
  upright: { kind: "axis", words: ["vertical"] },
  inlet: { kind: "place", words: ["intake", "inl", "int"] },
  exhaust: { kind: "place", words: ["exh", "ex"] },
  second: { kind: "place", words: ["2nd"] },
  oil: { kind: "place", words: ["oil ring", "scraper", "oil control"] },
  tightest: { kind: "place", words: [] },
  loosest: { kind: "place", words: [] },
};

/** Letters that stand for an axis, in a line that tells nothing else. */
export const AXIS_LETTERS: Readonly<Record<string, string>> = { t: "thrust", p: "pin" };
