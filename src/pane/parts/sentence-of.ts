import { isRefusal } from "../../workbook/port.ts";
import { PartMissing } from "./parts.ts";

/** Some errors are sentences for people already; anything else is a fault of ours and says so. */
export function sentenceOf(error: unknown): string {
  if (isRefusal(error) || error instanceof PartMissing) return error.message;
  return `This did not work, through a fault in Crosshatch: ${(error as Error | null)?.message ?? error}`;
}
