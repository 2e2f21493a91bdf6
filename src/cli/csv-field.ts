/** What makes a spreadsheet take a text for a formula: the signs of formulas, their wide forms, and what it may pass over before them. */
const LIKE_A_FORMULA = /^(?:[\t\r\n]|[\s"]*[=+\-@\uff1d\uff0b\uff0d\uff20])/;

/**
 * Where a spreadsheet of a country that writes decimal commas parts columns by semicolons, quotes that stand
 * after our commas hold nothing together: what comes after a semicolon or a line end inside them begins a cell.
 */
const LIKE_A_FORMULA_INSIDE = /([;\t\r\n][\s"]*)(?=[=@\uff1d\uff20]|[+\-\uff0b\uff0d](?![\d.,]+(?:[;\t\r\n"]|$)))/g;

/** Text that a spreadsheet would take for a formula gets an apostrophe; numbers stay numbers. */
export function csvField(content: string | number): string {
  if (typeof content === "number") return String(content);
  const harmless = (LIKE_A_FORMULA.test(content) ? `'${content}` : content).replace(LIKE_A_FORMULA_INSIDE, "$1'");
  return /[",;\t\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
