/** The fields of each line of JSON of `compare` and `trial`, as README lists them; `?` behind those that only some lines have. */
const JUDGED = [
  ...["level", "unit", "n", "by", "degreesOfFreedom", "uncertainty", "commonUncertainty", "lower", "upper", "p", "pAdjusted", "family"],
  ...["matters", "withinMatters", "mayHide", "toSee", "beyondGauge", "verdict", "says"],
];

const SUBJECT = ["label", "engine", "cylinder", "characteristic", "position"];

export const FIELDS: Readonly<Record<string, readonly string[]>> = {
  change: [
    ...[...SUBJECT, "before", "after", "change", "en", "direction", "repeats?", "masterMoved?", "temperatureCorrection?"],
    ...[...JUDGED, "limits", "at"],
  ],
  "mean change": ["label", "engine", "characteristic", "cylinders", "change", "without", ...JUDGED],
  "difference of changes": ["label", "engines", "characteristic", "cylinder?", "position?", "changes", "difference", ...JUDGED],
  groups: ["label", "groups", "engines", "characteristic", "places", "changes", "difference", ...JUDGED],
  wear: [
    ...[...SUBJECT, "unit", "useUnit", "stage", "n", "useFrom", "useTo", "ratePer", "rate", "lower", "upper", "distinguishable", "limit"],
    ...["life", "earliest", "latest", "notBefore", "says"],
  ],
  refused: [...SUBJECT, "reason", "before", "after"],
  summary: ["between", "says", "verdicts", "rows", "compared", "refused", "counts", "notes", "unread"],
};

/** In the counts of each kind of line. */
export const COUNTS = ["lines", "judged", "beyondGauge", "expectedByChance", "differs", "sameWithin", "cannotTell"];
