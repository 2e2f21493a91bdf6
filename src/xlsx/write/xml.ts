import { escapedXml } from "../xml.ts";

/** Text as XML holds it, in an element or between double quotes. Signs that XML cannot hold are left out. */
export const xmlText = (text: string): string => escapedXml(text.replace(UNFIT, ""));

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones that XML forbids
const UNFIT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

export const HEADING = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** An element with attributes; those that are `undefined` are left out. Closed in itself when it has no content. */
export function xmlElement(name: string, attributes: Readonly<Record<string, string | number | undefined>> = {}, content?: string): string {
  const written = Object.entries(attributes)
    .flatMap(([key, value]) => (value === undefined ? [] : ` ${key}="${xmlText(String(value))}"`))
    .join("");
  return content === undefined ? `<${name}${written}/>` : `<${name}${written}>${content}</${name}>`;
}
