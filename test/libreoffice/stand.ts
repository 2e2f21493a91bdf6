import { join } from "node:path";
import { buildExtension } from "../../src/tools/libreoffice.ts";
import { onceARun } from "../helpers/once-a-run.ts";
import { Office, programs } from "./office.ts";

/** The office program with our extension, running without a window; `npm run test:libreoffice` has seen to it that it is there. */
export async function officeWithExtension(): Promise<Office> {
  const found = programs();
  if (typeof found === "string") throw new Error(found);
  const folder = await onceARun("libreoffice", (into) => buildExtension(join(into, "crosshatch.oxt")));
  const office = new Office(found);
  office.add(join(folder, "crosshatch.oxt"));
  await office.start();
  return office;
}
