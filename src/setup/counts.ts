/** What a person chooses before a build sheet is set up; one entry drives the form, the command line and the sentences. */
export const COUNTS = {
  cylinders: { least: 1, most: 16 },
  heights: { least: 2, most: 5 },
  axes: { least: 2, most: 4 },
  valves: { least: 2, most: 5 },
} as const;
export type CountName = keyof typeof COUNTS;

export const UNITS = ["mm", "in"] as const;
export type LengthUnit = (typeof UNITS)[number];

/** What the counts count, as forms and help say it. */
export const COUNT_WORDS: Readonly<Record<CountName, string>> = {
  cylinders: "cylinders",
  heights: "heights at which each bore is measured",
  axes: "axes along which each bore is measured",
  valves: "valves of each cylinder",
};
