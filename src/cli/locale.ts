import type { DecimalSign } from "../check/csv/check-csv.ts";
import { Refusal } from "./exit-codes.ts";

/** The decimal sign of a locale such as `de` or `en-GB`. */
export function decimalSignOf(locale: string): DecimalSign {
  let sign: string | undefined;
  try {
    sign = new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === "decimal")?.value;
  } catch {
    throw new Refusal(`${locale} is not a locale: wanted is a language tag such as de or en-GB`);
  }
  if (sign !== "." && sign !== ",") throw new Refusal(`the locale ${locale} writes a decimal sign that is neither a point nor a comma`);
  return sign;
}
