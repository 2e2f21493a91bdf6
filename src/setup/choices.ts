import { z } from "zod";
import { SHEET_WORDS, SHEETS, type SheetWord } from "./sheets.ts";

/** What a person chooses before a build sheet is set up; one entry drives the form, the command line and the sentences. */
export const COUNTS = {
  cylinders: { least: 1, most: 16 },
  heights: { least: 2, most: 5 },
  axes: { least: 2, most: 4 },
  valves: { least: 2, most: 5 },
} as const;

export type CountName = keyof typeof COUNTS;

export const LENGTH_UNITS = ["mm", "in"] as const;

export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** What the counts count, as forms and help say it. */
export const COUNT_WORDS: Readonly<Record<CountName, string>> = {
  cylinders: "cylinders",
  heights: "heights at which each bore is measured",
  axes: "axes along which each bore is measured",
  valves: "valves of each cylinder",
};

/** Records alone: nothing on them is measured and judged. */
const RECORDS: readonly SheetWord[] = ["run-in", "torques", "parts", "notes", "shop"];

/** Words between commas, or a list of them; a sheet may also be called by its name. */
const without = z
  .preprocess(
    (given) => (typeof given === "string" ? given.split(",") : given),
    z.array(
      z.preprocess(
        (given) => {
          const word = String(given).trim().toLowerCase();
          return SHEET_WORDS.find((one) => one === word || SHEETS[one].toLowerCase() === word) ?? given;
        },
        z.enum(SHEET_WORDS, {
          error: ({ input }) => `without ${said(typeof input === "string" ? input.trim() : input)} is not possible: it takes any of ${SHEET_WORDS.join(", ")}`,
        }),
      ),
    ),
  )
  .refine((left) => SHEET_WORDS.some((word) => !left.includes(word) && !RECORDS.includes(word)), {
    error: `without leaves no sheet for readings: it must keep at least one of ${SHEET_WORDS.filter((word) => !RECORDS.includes(word)).join(", ")}`,
  });

/** A whole number, also as it is typed in a form or on a command line. */
function count(name: CountName) {
  const { least, most } = COUNTS[name];
  const wanted = `it must be a whole number from ${least} to ${most}`;
  const error = ({ input }: { input?: unknown }) =>
    input === undefined ? `${name} is not given: ${wanted}` : `${name} ${said(input)} is not possible: ${wanted}`;
  return z.preprocess(
    (given) => (typeof given === "string" && /^\s*\d+\s*$/.test(given) ? Number(given) : given),
    z.int({ error }).min(least, { error }).max(most, { error }),
  );
}

const said = (input: unknown): string => (typeof input === "string" ? JSON.stringify(input.slice(0, 40)) : String(input));

const choicesSchema = z.strictObject(
  {
    cylinders: count("cylinders"),
    heights: count("heights").default(3),
    axes: count("axes").default(2),
    valves: count("valves").default(2),
    unit: z.enum(LENGTH_UNITS, { error: ({ input }) => `unit ${said(input)} is not possible: it must be mm or in` }).default("mm"),
    secondReadings: z.boolean({ error: ({ input }) => `second readings ${said(input)} is not possible: it must be true or false` }).default(false),
    without: without.readonly().default([]),
  },
  {
    error: (issue) =>
      issue.code === "unrecognized_keys" ? `${issue.keys.join(", ")} is no choice of a build sheet` : "the choices of a build sheet are wanted",
  },
);

export type BuildSheetChoices = z.output<typeof choicesSchema>;

/** The choices, completed with what was left out, or a sentence for each one that cannot be. */
export function readChoices(given: unknown): { choices: BuildSheetChoices } | { sentences: string[] } {
  const read = choicesSchema.safeParse(given);
  return read.success ? { choices: read.data } : { sentences: read.error.issues.map(({ message }) => message) };
}
