/**
 * Sheets that can be left out, by the word that leaves them out. The engine's data, the limits and the summary
 * are always there: the others rest on them.
 */
export const SHEETS = {
  bores: "Bores",
  pistons: "Pistons",
  rings: "Rings",
  crankshaft: "Crankshaft",
  rods: "Rods",
  camshaft: "Camshaft",
  guides: "Guides and seats",
  springs: "Springs",
  faces: "Faces",
  surface: "Surface",
  valves: "Valves",
  volumes: "Volumes",
  tests: "Tests",
  oil: "Oil and blow-by",
  "run-in": "Run-in log",
  torques: "Torques",
  parts: "Parts list",
  notes: "Notes",
  shop: "Shop",
} as const;

export type SheetWord = keyof typeof SHEETS;

export const SHEET_WORDS = Object.keys(SHEETS) as readonly SheetWord[];

interface LeftOut {
  without: readonly SheetWord[];
}

/** Whether a build sheet has a sheet. */
export const hasSheet = ({ without }: LeftOut, word: SheetWord): boolean => !without.includes(word);

/** Whether it has one of those to which something belongs; what belongs to none in particular is always there. */
export const hasOneOf = (choices: LeftOut, words: readonly SheetWord[] | undefined): boolean =>
  words === undefined || words.some((word) => hasSheet(choices, word));
