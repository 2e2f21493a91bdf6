import { basename } from "node:path";
import { openWorkbook } from "../hosts/file.ts";
import { type LimitsModel, modelsIn } from "../setup/limits-book.ts";
import type { SheetSnapshot } from "../workbook/port.ts";
import { Refusal } from "./exit-codes.ts";
import { whyUnread, workbookBytes } from "./read-file.ts";

/** The sheet of a limits book that is wanted; without a name the only one. */
export async function limitsModel(file: string, name: string | undefined): Promise<LimitsModel> {
  let sheets: readonly SheetSnapshot[];
  try {
    ({ sheets } = await (await openWorkbook(await workbookBytes(file), basename(file))).read());
  } catch (error) {
    throw new Refusal(`${file} ${whyUnread(error)}`);
  }
  const models = modelsIn(sheets);
  if (models.length === 0) throw new Refusal(`${file} holds no table of limits: it needs the headings Characteristic, Lower, Upper and Unit`);
  const names = models.map((one) => one.name).join(", ");
  const found = name === undefined ? (models.length === 1 ? models[0] : undefined) : models.find((one) => one.name.toLowerCase() === name.trim().toLowerCase());
  if (found) return found;
  throw new Refusal(name === undefined ? `${file} has limits for ${names}: name one with --model` : `${file} has no model ${name}: it has ${names}`);
}
