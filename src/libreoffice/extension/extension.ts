import { readdirSync, readFileSync, statSync } from "node:fs";
import { join, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { strToU8, type Zippable, zipSync } from "fflate";
import { VERSION } from "../../core/version.ts";
import { calcAddIns } from "./calc-add-ins.ts";
import { typeLibrary } from "./type-library.ts";

const OFFICE = fileURLToPath(new URL("../office", import.meta.url));
/** No clock goes in: the same sources make the same bytes. */
const MADE = new Date("2020-01-01T00:00:00");

/** What is put beside what stands in `office/`: the bundle, a picture, licences. */
export type ExtensionParts = Readonly<Record<string, Uint8Array | string>>;

/** The extension, an archive that the office program installs. */
export function extensionFile(parts: ExtensionParts): Uint8Array {
  const files: Record<string, Uint8Array | string> = { ...officeFiles(), "types.rdb": typeLibrary(), "CalcAddIns.xcu": calcAddIns(), ...parts };
  const packed: Zippable = {};
  for (const [name, content] of Object.entries(files)) packed[name] = [typeof content === "string" ? strToU8(content) : content, { mtime: MADE }];
  return zipSync(packed);
}

function officeFiles(): Record<string, string> {
  const names = readdirSync(OFFICE, { recursive: true }).map(String).sort();
  const files = names.filter((name) => statSync(join(OFFICE, name)).isFile() && !name.includes("__pycache__"));
  return Object.fromEntries(files.map((name) => [name.split(sep).join("/"), readFileSync(join(OFFICE, name), "utf8").replace("{{version}}", VERSION)]));
}
