import { SaxesParser } from "saxes";

/** An element of an XML file, with its place in the file for sentences about it. */
export interface Element {
  /** Without a prefix. */
  name: string;
  namespace: string;
  attributes: Record<string, string>;
  children: Element[];
  text: string;
  line: number;
}

/** The root element of an XML text; throws the parser's sentence when it is not well formed. */
export function parseXml(xml: string): Element {
  const parser = new SaxesParser({ xmlns: true });
  const open: Element[] = [];
  let root: Element | undefined;
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ local, uri, attributes }) => {
    const plain = Object.fromEntries(Object.values(attributes).map((one) => [one.name, one.value]));
    const element: Element = { name: local, namespace: uri, attributes: plain, children: [], text: "", line: parser.line };
    open.at(-1)?.children.push(element);
    root ??= element;
    open.push(element);
  });
  parser.on("text", (text) => {
    if (open.length > 0) open.at(-1)!.text += text;
  });
  parser.on("closetag", () => void open.pop());
  parser.write(xml).close();
  return root!;
}

/** The element and everything inside it, in the order of the file. */
export function* walk(element: Element): Generator<Element> {
  yield element;
  for (const child of element.children) yield* walk(child);
}

export const child = (element: Element | undefined, name: string): Element | undefined => element?.children.find((one) => one.name === name);
