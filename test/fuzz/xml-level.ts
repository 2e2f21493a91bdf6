import { strFromU8, strToU8, zipSync } from "fflate";
import { edge } from "./edge-values.ts";
import { openAndCheck } from "./open-and-check.ts";
import type { Level } from "./outcome.ts";
import type { FuzzRandom } from "./random.ts";
import { BOOKS } from "./samples.ts";

/** Parts that are read: the others make no difference, as the level of parts shows. */
const READ = /\.rels$|workbook\.xml$|sheet\d+\.xml$|sharedStrings\.xml$|table\d*\.xml$|^customXml\//;

/** The text of one part, changed where its markup has joints: tags, attributes, text, whole elements. */
export const xmlLevel: Level = {
  name: "part XML",
  weight: 9,
  run(random) {
    const { parts } = random.pick(BOOKS);
    const name = random.pick(Object.keys(parts).filter((one) => READ.test(one)));
    const xml = mutatedXml(strFromU8(parts[name]!), random);
    return openAndCheck(zipSync({ ...parts, [name]: strToU8(xml) }, { level: 1 }), xml);
  },
};

export function mutatedXml(xml: string, random: FuzzRandom): string {
  let pieces: string[] = xml.match(/<[^>]*>|[^<]+/g) ?? [];
  for (let n = 1 + random.below(3); n > 0; n--) pieces = random.pick(CHANGES)(pieces, random);
  return pieces.join("");
}

type Change = (pieces: string[], random: FuzzRandom) => string[];

const somewhere = (pieces: readonly string[], random: FuzzRandom): number => random.below(pieces.length + 1);
const at = (pieces: readonly string[], random: FuzzRandom, fits: (piece: string) => boolean): number => {
  const places = pieces.flatMap((piece, i) => (fits(piece) ? [i] : []));
  return places.length ? random.pick(places) : -1;
};
const isOpening = (piece: string): boolean => /^<[a-zA-Z]/.test(piece);

const escaped = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll('"', "&quot;");

const attribute: Change = (pieces, random) => {
  const i = at(pieces, random, (piece) => isOpening(piece) && piece.includes("="));
  if (i < 0) return pieces;
  const found = [...pieces[i]!.matchAll(/\s[\w:]+="[^"]*"/g)].map(([one]) => one);
  if (found.length === 0) return pieces;
  const one = random.pick(found);
  const [name] = one.split("=");
  const other = random.pick(found);
  const changed = random.pick([`${name}="${escaped(edge(random))}"`, `${name}="${escaped(edge(random))}"`, "", one + one, `${name}=${other.split("=")[1]}`]);
  return pieces.with(
    i,
    pieces[i]!.replace(one, () => changed),
  );
};

const text: Change = (pieces, random) => {
  const i = at(pieces, random, (piece) => !piece.startsWith("<"));
  return i < 0 ? pieces : pieces.with(i, random.chance(0.9) ? escaped(edge(random)) : edge(random));
};

/** From a piece to the one that closes it. */
function element(pieces: readonly string[], from: number): number {
  let depth = 0;
  for (let i = from; i < pieces.length; i++) {
    const piece = pieces[i]!;
    if (isOpening(piece) && !piece.endsWith("/>")) depth++;
    else if (piece.startsWith("</")) depth--;
    if (depth <= 0) return i + 1;
  }
  return pieces.length;
}

const takeOut: Change = (pieces, random) => {
  const from = at(pieces, random, isOpening);
  return from < 0 ? pieces : pieces.toSpliced(from, element(pieces, from) - from);
};

const repeat: Change = (pieces, random) => {
  const from = at(pieces, random, isOpening);
  if (from < 0) return pieces;
  const whole = pieces.slice(from, element(pieces, from));
  return pieces.toSpliced(somewhere(pieces, random), 0, ...whole);
};

const exchange: Change = (pieces, random) => {
  const [i, j] = [at(pieces, random, () => true), at(pieces, random, () => true)];
  return i < 0 ? pieces : pieces.with(i, pieces[j]!).with(j, pieces[i]!);
};

const JUNK = [
  "<!DOCTYPE x [<!ENTITY a SYSTEM 'file:///etc/passwd'>]>",
  "<![CDATA[",
  "]]>",
  "<?x y?>",
  "<!-- -->",
  "&#0;",
  "&a;",
  "<x:y/>",
  "<c>",
  "</c>",
  "<f>1</f>",
];
const junk: Change = (pieces, random) => pieces.toSpliced(somewhere(pieces, random), 0, random.pick(JUNK));

const CHANGES: readonly Change[] = [attribute, attribute, attribute, text, text, takeOut, repeat, exchange, junk];
