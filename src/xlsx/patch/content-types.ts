import { xmlText } from "../xml-text.ts";
import { Patch } from "./edit.ts";
import { scan, startOfEnd } from "./scan.ts";

const NAMESPACE = "http://schemas.openxmlformats.org/package/2006/content-types";
export const CONTENT_TYPES = "[Content_Types].xml";

/** Says of new parts what they are (ECMA-376 part 2, 7.2). What the list says already of a part or its ending stays. */
export function withTypes(part: Uint8Array, added: ReadonlyMap<string, string>): Uint8Array {
  const patch = new Patch(part);
  const endings = new Map<string, string>();
  const parts = new Set<string>();
  let prefix = "";
  let end = 0;
  scan(
    patch.bytes,
    CONTENT_TYPES,
    {
      open({ name, prefix: own, attributes: { Extension = "", ContentType = "", PartName = "" } }) {
        prefix = own;
        if (name === "Default") endings.set(Extension.toLowerCase(), ContentType);
        else if (name === "Override") parts.add(PartName.toLowerCase());
      },
      close(name, to) {
        if (name === "Types") end = startOfEnd(patch.bytes, to);
      },
    },
    (uri) => uri === NAMESPACE,
  );
  for (const [name, type] of added) {
    const ending = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
    if (parts.has(`/${name}`.toLowerCase()) || endings.get(ending) === type) continue;
    patch.insert(end, `<${prefix}Override PartName="/${xmlText(name)}" ContentType="${type}"/>`);
  }
  return patch.result();
}
