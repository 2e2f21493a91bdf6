import { basename, extname } from "node:path";
import { counted } from "../core/number-text.ts";
import { openWorkbook } from "../hosts/file.ts";
import { limitsFor } from "../setup/limits-for-workbook.ts";
import { placeName } from "../workbook/address.ts";
import { typedCopy } from "../xlsx/patch/typed-copy.ts";
import { ALL_WELL, Refusal } from "./exit-codes.ts";
import { refuseAsInput } from "./inputs.ts";
import { limitsModel } from "./limits-model.ts";
import { complain, print, printable } from "./output.ts";
import { whyUnread, workbookBytes } from "./read-file.ts";
import { put } from "./safe-file.ts";
import { unpack } from "./unpack.ts";

export interface LimitsOptions {
  limits?: string;
  model?: string;
  replace?: boolean;
  force?: boolean;
}

/** `crosshatch limits IN.xlsx OUT.xlsx --limits BOOK`: a copy of a workbook with the limits of a limits book in its tables of limits. */
export async function copyLimits(file: string, out: string, { limits, model, replace = false, force = false }: LimitsOptions): Promise<number> {
  if (limits === undefined) throw new Refusal("--limits is not given: name the limits book");
  for (const one of [file, out])
    if (extname(one).toLowerCase() !== ".xlsx") throw new Refusal(`${one} does not end with .xlsx, which is what is read and written`);
  refuseAsInput(out, [file, limits], "the copy");
  const wanted = await limitsModel(limits, model);
  const opened = await openedBytes(file);
  const { edits, copied, same, others, notes } = limitsFor((await opened.host.read()).sheets, wanted, basename(limits));
  const all = [...edits, ...(replace ? others.flatMap((other) => other.edits) : [])];
  await opened.host.write(all);
  put(out, typedCopy(opened.bytes, all, opened.host.contents()), force);
  const counts = [
    `${counted(copied, "limit")} copied from ${basename(limits)}, ${wanted.name}`,
    replace && others.length > 0 && `${others.length} replaced`,
    same > 0 && `${same} the same already`,
    !replace && others.length > 0 && `${others.length} typed differently there and left`,
  ].filter(Boolean);
  await print(`${printable(out)}: ${counts.join(", ")}. Look them over against the maker's service manual.`);
  for (const { characteristic, cell, typed, inBook } of others)
    complain(
      `${placeName(cell)}, ${characteristic}: ${replace ? "was" : "is"} ${typed}, in the limits book ${inBook}${replace ? "" : "; left as it is without --replace"}`,
    );
  for (const note of notes) complain(`${basename(limits)}: ${note}`);
  return ALL_WELL;
}

async function openedBytes(file: string) {
  try {
    const bytes = await workbookBytes(file);
    return { bytes, host: await openWorkbook(bytes, basename(file), unpack) };
  } catch (error) {
    throw new Refusal(`${file} ${whyUnread(error)}`);
  }
}
