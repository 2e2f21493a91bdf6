import { z } from "zod";
import { HEADING_FIELDS, ROLES } from "../vocabulary/phrases.ts";
import { HostRefusal, type SheetHost } from "../workbook/port.ts";
import { LAYOUT_KEY, LAYOUT_ON_SHEET } from "../workbook/storage.ts";

/**
 * What the shop has said about its own layout: which ranges hold readings or limits, and where the
 * words stand that say what each number is. Kept inside the workbook as JSON; what is read back is
 * as foreign as any file, so it is checked whole before it is used.
 */

export type { HeadingField, Role } from "../vocabulary/phrases.ts";

const MOST_ROWS = 1_048_576;
const MOST_COLUMNS = 16_384;
const row = z
  .int()
  .min(0)
  .max(MOST_ROWS - 1);
const column = z
  .int()
  .min(0)
  .max(MOST_COLUMNS - 1);
const words = z.string().max(100);

const headLine = z.strictObject({
  /** Row or column of the sheet in which the words stand. */
  at: z
    .int()
    .min(0)
    .max(MOST_ROWS - 1),
  tells: z.array(z.enum(HEADING_FIELDS)).min(1),
  /** A blank cell stands for the one before it, as where cells are merged. */
  merged: z.boolean().default(false),
});

const fixedSchema = z.strictObject({
  engine: words.optional(),
  cylinder: words.optional(),
  characteristic: words.optional(),
  position: words.optional(),
  role: z.enum(ROLES).optional(),
  unit: words.optional(),
});

const rangeSchema = z.strictObject({
  sheet: z.string().min(1).max(255),
  /** The numbers alone, without their headings. */
  row,
  column,
  rows: z.int().min(1).max(MOST_ROWS),
  columns: z.int().min(1).max(MOST_COLUMNS),
  /** Columns whose cells say what the row is about. */
  rowHeads: z.array(headLine).max(20),
  /** Rows whose cells say what the column is about. */
  columnHeads: z.array(headLine).max(20),
  /** What holds for every number, whatever the headings say. */
  fixed: fixedSchema,
  /** What holds where the headings say nothing, as in the title of a table. */
  otherwise: fixedSchema.pick({ engine: true, characteristic: true, unit: true }),
  /** Readings and the limits that stand in line with them belong together by row, by column, or not at all. */
  records: z.enum(["cell", "row", "column"]),
  /** Rows and columns of the sheet inside the range that hold something else. */
  without: z.strictObject({ rows: z.array(row).max(10_000), columns: z.array(column).max(1000) }),
  /** Rows that are filled in below later belong to it as well. */
  grows: z.boolean(),
  /** Headings by their distance from the first number, to find the range again when it has been moved. */
  signature: z.array(z.tuple([z.int(), z.int(), z.string().max(200)])).max(80),
});

/** Cells of all ranges together: no workbook that is read holds more. */
const MOST_CELLS = 500_000;
const isWithinReason = (ranges: readonly { rows: number; columns: number }[]): boolean =>
  ranges.reduce((cells, { rows, columns }) => cells + rows * columns, 0) <= MOST_CELLS;

const mappingSchema = z.strictObject({ version: z.literal(1), ranges: z.array(rangeSchema).max(500).refine(isWithinReason) });

export type HeaderRow = z.output<typeof headLine>;
export type Fixed = z.output<typeof fixedSchema>;
export type MappedRange = z.output<typeof rangeSchema>;
export type Mapping = z.output<typeof mappingSchema>;

export const NO_MAPPING: Mapping = { version: 1, ranges: [] };

/** A saved layout, or why it cannot be used. */
export function readMapping(text: string): Mapping | { unread: string } {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return { unread: "the saved layout of this workbook is damaged: set it up again" };
  }
  const read = mappingSchema.safeParse(json);
  if (read.success) return read.data;
  const version = (json as { version?: unknown } | null)?.version;
  const isNewer = typeof version === "number" && version > 1;
  const [issue] = read.error.issues;
  const where = issue?.path.length ? ` (${issue.path.join(".")})` : "";
  return {
    unread: isNewer
      ? "the saved layout of this workbook was made by a newer Crosshatch"
      : `the saved layout of this workbook is damaged${where}: set it up again`,
  };
}

export const isUnread = (mapping: Mapping | { unread: string } | null): mapping is { unread: string } => mapping !== null && "unread" in mapping;

/** The layout that a workbook keeps; `null` for none. That on its own sheet counts where there is no other. */
export async function loadMapping(host: Pick<SheetHost, "loadText">): Promise<Mapping | { unread: string } | null> {
  const text = (await host.loadText(LAYOUT_KEY)) || (await host.loadText(LAYOUT_ON_SHEET));
  return text ? readMapping(text) : null;
}

const DIFFERENT =
  "this workbook keeps two layouts that differ: the one beside its sheets counts, not the one on its hidden sheet, as it is the one that Crosshatch wrote last; keep the layout again under Layout, and both are the same";

/** The layout that a workbook keeps, for whoever only uses it: a damaged one is a note for people. */
export async function storedLayout(host: Pick<SheetHost, "loadText">): Promise<{ mapping: Mapping | undefined; notes: string[] }> {
  const kept = await loadMapping(host);
  if (isUnread(kept)) return { mapping: undefined, notes: [kept.unread] };
  const [own, second] = [await host.loadText(LAYOUT_KEY), await host.loadText(LAYOUT_ON_SHEET)];
  return { mapping: kept ?? undefined, notes: own && second && own !== second ? [DIFFERENT] : [] };
}

/** Keeps a layout in the workbook, on a hidden sheet as well; one without ranges takes it off. */
export async function storeMapping(host: Pick<SheetHost, "storeText">, mapping: Mapping): Promise<void> {
  const text = mapping.ranges.length === 0 ? "" : JSON.stringify(mappingSchema.parse(mapping));
  await host.storeText(LAYOUT_KEY, text);
  try {
    await host.storeText(LAYOUT_ON_SHEET, text);
  } catch (error) {
    if (!(error instanceof HostRefusal)) throw error;
    throw new HostRefusal(`The layout is kept, but not a second time on a hidden sheet, which other programs carry along: ${error.message}`, { cause: error });
  }
}
