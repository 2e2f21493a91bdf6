import { specs } from "../../functions/index.ts";

/**
 * The interface of our functions as the office program's types know it, in its binary form ("UNOIDL", as
 * `unoidl-write` of its development kit makes it). Each function takes `any` for each input, as any may be
 * left out, and gives rows of `any`:
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
const RESULT = "[][]any";

export const MODULES = ["crosshatch"] as const;
export const INTERFACE_NAME = "XHatch";

interface Method {
  name: string;
  params: number;
}

export const paramName = (index: number): string => `p${index + 1}`;

const METHODS: readonly Method[] = specs.map(({ name, inputs }) => ({ name, params: inputs.length }));

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
    text(RESULT);
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
    .map(({ name, params }) => `  sequence< sequence<any> > ${name}(${Array.from({ length: params }, (_, i) => `[in] any ${paramName(i)}`).join(", ")});`)
    .join("\n")}\n}; ${"}; ".repeat(MODULES.length)}\n`;
