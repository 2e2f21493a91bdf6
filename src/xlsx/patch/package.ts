import { deflateSync } from "fflate";
import { escapedXml } from "../xml.ts";
import { crc32, type Zip, type ZipEntry } from "../zip.ts";
import { BytesPatch } from "./edit.ts";
import { scan, startOfEnd } from "./scan.ts";

/** The parts of a workbook while some of them are replaced and others added. */
export class Package {
  readonly #spelled: ReadonlyMap<string, string>;
  readonly #changed = new Map<string, Uint8Array>();
  readonly #types = new Map<string, string>();

  constructor(
    readonly bytes: Uint8Array,
    readonly zip: Zip,
  ) {
    this.#spelled = new Map(zip.entries().map(({ name }) => [name.toLowerCase(), name]));
  }

  read(name: string): Uint8Array | undefined {
    return this.#changed.get(this.#name(name)) ?? this.zip.read(name);
  }

  /** Puts what is made of a part in its place; one that is the same stays as it is packed. */
  change(name: string, make: (part: Uint8Array) => Uint8Array): void {
    const old = this.read(name)!;
    const made = make(old);
    if (made !== old && !isSame(made, old)) this.#changed.set(this.#name(name), made);
  }

  /** A new part; gives the name that it gets, the first that is free of `folder/stem1.xml`, `folder/stem2.xml`, … */
  add(stem: string, content: Uint8Array, type: string): string {
    let number = 1;
    while (this.has(`${stem}${number}.xml`)) number++;
    const name = `${stem}${number}.xml`;
    this.put(name, content, type);
    return name;
  }

  /** A part of a name that is free. */
  put(name: string, content: Uint8Array, type: string): void {
    this.#changed.set(name, content);
    this.#types.set(name, type);
  }

  written(): Uint8Array {
    if (this.#types.size > 0) this.change(CONTENT_TYPES, (types) => withTypes(types, this.#types));
    return rewriteArchive(this.bytes, this.zip.entries(), this.#changed);
  }

  has(name: string): boolean {
    return this.zip.has(name) || [...this.#changed.keys()].some((one) => one.toLowerCase() === name.toLowerCase());
  }

  #name(name: string): string {
    return this.#spelled.get(name.toLowerCase()) ?? name;
  }
}

const isSame = (a: Uint8Array, b: Uint8Array): boolean => a.length === b.length && a.every((byte, i) => byte === b[i]);

/** PKWARE APPNOTE 6.3.10, 4.3.7, 4.3.12 and 4.3.16. */
const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const LOCAL_SIZE = 30;
const CENTRAL_SIZE = 46;
const END_SIZE = 22;
/** Flags that stay: the name is UTF-8. Sizes stand where they belong, so that of the others none holds. */
const KEPT_FLAGS = 0x0800;
const STORED = 0;
const DEFLATED = 8;
const VERSION = 20;

interface Record {
  name: Uint8Array;
  method: number;
  crc: number;
  size: number;
  packed: Uint8Array;
  /** The entry's line in the old table of contents, for what else stands in it: time, system, attributes. */
  like: number;
  flags: number;
  offset: number;
}

/**
 * The archive with parts replaced and added. Every other part keeps its packed bytes, its place in the
 * order and its time; a replaced one its way of packing too. Parts are named as the archive spells them.
 */
function rewriteArchive(bytes: Uint8Array, entries: readonly ZipEntry[], parts: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const records = entries.map((entry): Record => {
    const name = bytes.subarray(entry.central + CENTRAL_SIZE, entry.central + CENTRAL_SIZE + view.getUint16(entry.central + 28, true));
    const old = { name, like: entry.central, flags: view.getUint16(entry.central + 8, true) & KEPT_FLAGS, offset: 0 };
    const content = parts.get(entry.name);
    if (content) return { ...old, ...packed(content, entry.method) };
    // Some programs call an empty part packed, which no packed part of no bytes is: other readers would stop at it.
    return {
      ...old,
      method: entry.packed === 0 ? STORED : entry.method,
      crc: entry.crc,
      size: entry.size,
      packed: bytes.subarray(entry.start, entry.start + entry.packed),
    };
  });
  const known = new Set(entries.map(({ name }) => name));
  for (const [name, content] of parts) {
    if (known.has(name)) continue;
    // No clock goes in: a new part is as old as the first.
    records.push({ name: new TextEncoder().encode(name), like: entries[0]!.central, flags: KEPT_FLAGS, offset: 0, ...packed(content, DEFLATED) });
  }
  const places = new Map(entries.map((entry, i) => [records[i], entry.start]));
  const inPlace = [...records].sort((a, b) => (places.get(a) ?? bytes.length) - (places.get(b) ?? bytes.length));
  return written(view, records, inPlace);
}

function packed(content: Uint8Array, method: number): Pick<Record, "method" | "crc" | "size" | "packed"> {
  return { method, crc: crc32(content), size: content.length, packed: method === DEFLATED ? deflateSync(content) : content };
}

/** Parts as they stand in the file, behind them the table of contents in its own order. */
function written(old: DataView, records: readonly Record[], inPlace: readonly Record[]): Uint8Array {
  const names = records.reduce((sum, { name }) => sum + name.length, 0);
  const contents = records.reduce((sum, one) => sum + one.packed.length, 0);
  const out = new Uint8Array(contents + 2 * names + records.length * (LOCAL_SIZE + CENTRAL_SIZE) + END_SIZE);
  const view = new DataView(out.buffer);
  let at = 0;
  for (const record of inPlace) {
    record.offset = at;
    view.setUint32(at, LOCAL, true);
    common(view, at + 4, record, old);
    out.set(record.name, at + LOCAL_SIZE);
    out.set(record.packed, at + LOCAL_SIZE + record.name.length);
    at += LOCAL_SIZE + record.name.length + record.packed.length;
  }
  const directory = at;
  for (const record of records) {
    view.setUint32(at, CENTRAL, true);
    view.setUint16(at + 4, old.getUint16(record.like + 4, true), true);
    common(view, at + 6, record, old);
    view.setUint16(at + 36, old.getUint16(record.like + 36, true), true);
    view.setUint32(at + 38, old.getUint32(record.like + 38, true), true);
    view.setUint32(at + 42, record.offset, true);
    out.set(record.name, at + CENTRAL_SIZE);
    at += CENTRAL_SIZE + record.name.length;
  }
  view.setUint32(at, END, true);
  view.setUint16(at + 8, records.length, true);
  view.setUint16(at + 10, records.length, true);
  view.setUint32(at + 12, at - directory, true);
  view.setUint32(at + 16, directory, true);
  return out;
}

/** What a part's own head and its line in the table say alike. */
function common(view: DataView, at: number, { name, method, crc, size, packed, like, flags }: Record, old: DataView): void {
  view.setUint16(at, VERSION, true);
  view.setUint16(at + 2, flags, true);
  view.setUint16(at + 4, method, true);
  view.setUint32(at + 6, old.getUint32(like + 12, true), true);
  view.setUint32(at + 10, crc, true);
  view.setUint32(at + 14, packed.length, true);
  view.setUint32(at + 18, size, true);
  view.setUint16(at + 22, name.length, true);
}

const NAMESPACE = "http://schemas.openxmlformats.org/package/2006/content-types";
const CONTENT_TYPES = "[Content_Types].xml";

/** Says of new parts what they are (ECMA-376 part 2, 7.2). What the list says already of a part or its ending stays. */
function withTypes(part: Uint8Array, added: ReadonlyMap<string, string>): Uint8Array {
  const patch = new BytesPatch(part);
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
    patch.insert(end, `<${prefix}Override PartName="/${escapedXml(name)}" ContentType="${type}"/>`);
  }
  return patch.result();
}
