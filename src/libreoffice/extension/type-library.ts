import type { Spec } from "../../core/define.ts";
import { specs } from "../../functions/index.ts";

/**
 * The interface of our functions as the office program's types know it, in its binary form ("UNOIDL", as
 * `unoidl-write` of its development kit makes it). Each function takes `any` for each input, as any may be
 * left out, and gives rows of `any`, or of `string` where it only ever gives text:
 *
 *     module crosshatch { interface XHatch { sequence< sequence<any> > TAPER([in] any p1, …); }; };
 *
 * Source of the form: what unoidl-write of LibreOffice 7.4.7 makes of that text; a test compares byte for
 * byte where the program is there.
 */
const MAGIC = [...Buffer.from("UNOIDL"), 0xff, 0];
const [MODULE, INTERFACE] = [0, 5];
const [IN, NONE] = [0, 0];
/** A text that stands in the file already is told by its place, with this bit set. */
const KNOWN = 0x80000000;
const BASE = "com.sun.star.uno.XInterface";

const MODULES = ["crosshatch"] as const;
const INTERFACE_NAME = "XHatch";

interface Method {
  name: string;
  params: number;
  givesText: boolean;
}

/**
 * True for a function that only ever gives text, as its examples do. Text among rows of `any` is, in
 * LibreOffice's cells, equal to no other text: `=D4="over"` is FALSE and COUNTIF counts 0 (7.4.7).
 */
export const givesText = ({ returns, examples }: Spec): boolean =>
  returns.kind === "value" && examples.every(({ gives }) => [gives].flat(2).every((one) => typeof one === "string"));

export const paramName = (index: number): string => `p${index + 1}`;

const METHODS: readonly Method[] = specs.map((spec) => ({ name: spec.name, params: spec.inputs.length, givesText: givesText(spec) }));

const element = ({ givesText: isText }: Method): string => (isText ? "string" : "any");

/** `maker` is the line in which the writer names itself. */
export function typeLibrary(maker = "** Crosshatch **", methods = METHODS): Buffer {
  const bytes: number[] = [...MAGIC, ...new Array(8).fill(0), 0, ...Buffer.from(maker), 0];
  const places = new Map<string, number>();
  const whole = (value: number): void => {
    bytes.push(value & 0xff, (value >>> 8) & 0xff, (value >>> 16) & 0xff, value >>> 24);
  };
  const text = (value: string): void => {
    const known = places.get(value);
    if (known === undefined) {
      places.set(value, bytes.length);
      whole(value.length);
      bytes.push(...Buffer.from(value));
    } else whole(known | KNOWN);
  };
  let [entity, name] = [bytes.length, INTERFACE_NAME as string];
  bytes.push(INTERFACE);
  whole(1);
  text(BASE);
  whole(NONE); // optional bases
  whole(NONE); // attributes
  whole(methods.length);
  for (const method of methods) {
    text(method.name);
    text(`[][]${element(method)}`);
    whole(method.params);
    for (let i = 0; i < method.params; i++) {
      bytes.push(IN);
      text(paramName(i));
      text("any");
    }
    whole(NONE); // exceptions
  }
  // From the inside out, each module holds a list of one entry: where its name stands, and what it names.
  for (const outer of [...MODULES].reverse()) {
    const nameAt = bytes.length;
    bytes.push(...Buffer.from(name), 0);
    const at = bytes.length;
    bytes.push(MODULE);
    whole(1);
    whole(nameAt);
    whole(entity);
    [entity, name] = [at, outer];
  }
  const nameAt = bytes.length;
  bytes.push(...Buffer.from(name), 0);
  const root = bytes.length;
  whole(nameAt);
  whole(entity);
  const made = Buffer.from(bytes);
  made.writeUInt32LE(root, MAGIC.length);
  made.writeUInt32LE(1, MAGIC.length + 4);
  return made;
}

/** The same as text, for the program that makes the binary form. */
export const typeText = (methods = METHODS): string =>
  `module ${MODULES.join(" { module ")} { interface ${INTERFACE_NAME} {\n${methods
    .map(
      (method) =>
        `  sequence< sequence<${element(method)}> > ${method.name}(${Array.from({ length: method.params }, (_, i) => `[in] any ${paramName(i)}`).join(", ")});`,
    )
    .join("\n")}\n}; ${"}; ".repeat(MODULES.length)}\n`;
