import { packageAddin } from "../../src/tools/package.ts";
import { onceARun } from "../helpers/once-a-run.ts";

export const ADDRESS = "https://files.example.org/shop/crosshatch";

/** The folder of the add-in, packaged for that address with office.js from Microsoft's network. */
export const packaged = (): Promise<string> => onceARun("package", (into) => packageAddin({ url: ADDRESS, officeJs: "cdn", out: into }));
