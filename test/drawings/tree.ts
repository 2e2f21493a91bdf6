import { SaxesParser } from "saxes";
import { type Drawing, type Drawn, isDrawing } from "../../src/drawings/svg.ts";

/** An element of a drawing as it stands in the SVG. */
export interface Node {
  name: string;
  attributes: Readonly<Record<string, string>>;
  /** Text in it, that of the elements inside included. */
  text: string;
  children: Node[];
}

/** Reads SVG strictly: what is not well-formed XML fails the test. */
export function treeOf(svg: string): Node {
  const parser = new SaxesParser();
  const open: Node[] = [{ name: "", attributes: {}, text: "", children: [] }];
  parser.on("opentag", ({ name, attributes }) => {
    const node = { name, attributes: attributes as Record<string, string>, text: "", children: [] };
    open.at(-1)!.children.push(node);
    open.push(node);
  });
  parser.on("text", (text) => {
    for (const node of open) node.text += text;
  });
  parser.on("closetag", () => open.pop());
  parser.on("error", (error) => {
    throw error;
  });
  parser.write(svg).close();
  return open[0]!.children[0]!;
}

export function* everyNode(node: Node): Generator<Node> {
  yield node;
  for (const child of node.children) yield* everyNode(child);
}

/** All elements of a class, in drawing order. */
export function classed(node: Node, className: string): Node[] {
  return [...everyNode(node)].filter(({ attributes }) => attributes.class?.split(" ").includes(className));
}

export function drawingOf(drawn: Drawn): Drawing & { tree: Node } {
  if (!isDrawing(drawn)) throw new Error(`not drawn: ${drawn.sentence}`);
  return { ...drawn, tree: treeOf(drawn.svg) };
}

export const sentenceOf = (drawn: Drawn): string | undefined => (isDrawing(drawn) ? undefined : drawn.sentence);

export const at = ({ attributes }: Node, name: string): number => Number(attributes[name]);

/** Numbers of a path of straight lines, by pairs. */
export function pointsOf({ attributes }: Node): [x: number, y: number][] {
  const numbers = (attributes.d!.match(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g) ?? []).map(Number);
  return Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i]!, numbers[2 * i + 1]!]);
}

/** A number as a drawing writes it, with its true minus sign. */
export const numberIn = (text: string): number => Number(text.replace("−", "-").replace("+", ""));

/** Text that would break out of the drawing, or mislead, if it were let through. */
export const HOSTILE = `"><script>alert(1)</script>&amp;' onload='x\u202egnp.exe\u0000\u0007 <!-- ]]>`;
/** What may be left of it. */
export const TAMED = `"><script>alert(1)</script>&amp;' onload='xgnp.exe <!-- ]]>`;
