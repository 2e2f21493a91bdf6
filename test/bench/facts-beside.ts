import type { Cell } from "@cj-tech-master/excelts";
import { readElsewhere } from "./shop-book.ts";

/** Without what says no more than its absence: some programs write it, others do not. */
const told = (fact: unknown): unknown =>
  fact !== null && typeof fact === "object" && !Array.isArray(fact)
    ? Object.fromEntries(Object.entries(fact).flatMap(([key, value]) => (SAYS_NOTHING.has(value) ? [] : [[key, told(value)]])))
    : fact;

const SAYS_NOTHING = new Set<unknown>([undefined, null, false, 0, "General", "general", "bottom", "none"]);

type Font = { name?: string; size?: number; color?: { theme?: number; argb?: string } };

/** Calibri of 11 points in black is what a cell without a font of its own has in the programs of these tests. */
function fontOf({ font }: Cell): unknown {
  const { name, size, color, family, scheme, charset, ...more } = (told(font ?? {}) ?? {}) as Font & Record<string, unknown>;
  const isDefault =
    (name ?? "Calibri") === "Calibri" && (size ?? 11) === 11 && (!color || color.theme === 1 || color.argb === "FF000000") && Object.keys(more).length === 0;
  return isDefault ? "the default" : { name, size, color, ...more };
}

/**
 * What a workbook holds beside its values, as excelts reads it: a reader that has nothing to do with ours or the
 * engine. Widths to half a character: the grid counts in pixels.
 */
export async function factsBeside(bytes: Uint8Array): Promise<Record<string, unknown>> {
  const book = await readElsewhere(bytes);
  const facts: Record<string, unknown> = {};
  for (const sheet of book.worksheets) {
    // The grid knows no sheet with an apostrophe in its name.
    const name = sheet.name.replaceAll("'", "’");
    const put = (place: string, given: unknown) => {
      const fact = told(given);
      if (!SAYS_NOTHING.has(fact) && !/^(?:\{\}|\[\])$/.test(JSON.stringify(fact))) facts[`${name}!${place}`] = fact;
    };
    sheet.eachRow({ includeEmpty: true }, (row) =>
      row.eachCell({ includeEmpty: true }, (cell) => {
        const { address, numFmt, fill, border, alignment, protection, master } = cell;
        // Of merged cells one is seen.
        if (master.address !== address) return;
        const { pattern, ...filled } = (fill ?? {}) as unknown as Record<string, unknown>;
        for (const [kind, fact] of Object.entries({
          numFmt,
          font: fontOf(cell),
          fill: pattern === "none" ? undefined : { pattern, ...filled },
          border,
          alignment,
        }))
          put(`${address} ${kind}`, fact);
        if (protection?.locked === false) facts[`${name}!${address} is open`] = true;
      }),
    );
    const { merges, conditionalFormattings, dataValidations, pageSetup, headerFooter, views, state } = sheet.model as unknown as Record<string, unknown>;
    put("merges", [...((merges as string[]) ?? [])].sort());
    const fills = (conditionalFormattings as { ref: string; rules: { priority: number }[] }[]).flatMap(({ ref, rules }) =>
      rules.map((rule) => ({ ...rule, ref })),
    );
    // The order counts; by which numbers it is told does not.
    put(
      "fills by rules",
      fills.sort((a, b) => a.priority - b.priority).map(({ priority, ...rule }) => told(rule)),
    );
    put("typing", dataValidations);
    put("print", pageSetup);
    put("header and footer", headerFooter);
    put("state", state === "visible" ? undefined : state);
    put(
      "frozen",
      (views as { state?: string; xSplit?: number; ySplit?: number }[])?.map(({ state: is, xSplit, ySplit }) => (is === "frozen" ? [xSplit, ySplit] : 0)),
    );
    for (let column = 1; column <= sheet.columnCount; column++) {
      const { width, hidden } = sheet.getColumn(column);
      if (width !== undefined) put(`column ${column}`, [Math.round(width * 2) / 2, hidden]);
    }
  }
  facts.names = (book.definedNames as unknown as { model: unknown }).model;
  return facts;
}
