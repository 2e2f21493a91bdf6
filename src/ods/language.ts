import type { XmlLanguage } from "../xlsx/xml.ts";

const BASE = "urn:oasis:names:tc:opendocument:xmlns:";
/** What a sheet's content is written in. Pictures, forms and what programs add of their own are passed over. */
const PREFIXES: Readonly<Record<string, string>> = {
  [`${BASE}office:1.0`]: "office",
  [`${BASE}table:1.0`]: "table",
  [`${BASE}text:1.0`]: "text",
  [`${BASE}style:1.0`]: "style",
  "urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0": "calcext",
};

/** Elements by their local names; attributes with the usual prefix of their namespace, whatever the file calls it. */
export const LANGUAGE: XmlLanguage = {
  isOwn: (uri) => uri in PREFIXES,
  attributesOf(tag) {
    const found: Record<string, string> = {};
    for (const key in tag.attributes) {
      const { local, uri, value } = tag.attributes[key]!;
      if (PREFIXES[uri]) found[`${PREFIXES[uri]}:${local}`] = value;
    }
    return found;
  },
};
