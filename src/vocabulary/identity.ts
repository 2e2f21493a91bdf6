import { CHARACTERISTICS } from "./characteristics.ts";
import { FIELD_WORDS, GAUGE_WORDS } from "./heading-words.ts";
import { byWord, fieldOf, foldedHeading, gaugeFieldOf, isSource } from "./headings.ts";
import { remembered } from "./remembered.ts";

const sizeWords = (name: string): string[] => [name, ...CHARACTERISTICS[name]!.words];
const engineWords = (isNumber: boolean): string[] => FIELD_WORDS.engine.filter((word) => / (?:no|number|id)$/.test(word) === isNumber);

/** Words that stand beside an entry that says whose engine it is and how it was measured: `Serial number | 0417`. */
export const IDENTITY_WORDS = {
  owner: ["owner", "customer"],
  yard: ["yard", "shop"],
  boat: ["boat", "vessel", "vehicle"],
  job: ["job", "job no", "job number", "order", "order no", "order number"],
  engine: ["engine", ...engineWords(false)],
  "engine number": engineWords(true),
  "serial number": ["serial number", "serial", "serial no", "engine serial", "engine serial no", "engine serial number"],
  type: ["type", "model", "engine type", "engine model", "motor type", "motor model"],
  hours: ["hours", ...FIELD_WORDS.hours],
  "measured on": ["measured", ...GAUGE_WORDS.used.filter((word) => word !== "date")],
  "checked on": ["checked", "checked on"],
  "stripped on": ["stripped", "stripped on"],
  "built on": ["built", "built on"],
  date: ["date"],
  person: ["measured by", "checked by", "stripped by", "built by", "inspector", "technician", "mechanic"],
  gauge: GAUGE_WORDS.gauge,
  "calibration due": GAUGE_WORDS.due,
  unit: ["unit", ...FIELD_WORDS.unit, "unit of length", "length unit"],
  ambient: ["ambient", "ambient temperature", "room temperature", "temperature", "ambient pressure"],
  cylinders: ["cylinders"],
  size: [...sizeWords("standard bore"), "bore", ...sizeWords("stroke")],
  oversize: ["oversize"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type IdentityField = keyof typeof IDENTITY_WORDS;

const FIELDS = byWord<IdentityField>(IDENTITY_WORDS);

/** What an entry's name stands for. */
export const identityFieldOf = (name: string): IdentityField | undefined => FIELDS.get(foldedHeading(name));

/** What tells engines apart, the best of it first. */
export const ENGINE_IDENTITY: readonly IdentityField[] = ["serial number", "engine number", "engine", "job"];

/** The day that a sheet speaks of, the best of it first. */
export const DAY_IDENTITY: readonly IdentityField[] = ["measured on", "checked on", "stripped on", "built on", "date"];

const DAYS: ReadonlySet<IdentityField> = new Set([...DAY_IDENTITY, "calibration due"]);
/** Words of headings of days that are no field of their own. */
const SAYS_DAY = /\b(?:date|day|due|on|until|valid to|calibrated)\b/i;

/** True for a heading or an entry's name under or beside which a number is a day. */
export function speaksOfDay(heading: string): boolean {
  const field = identityFieldOf(heading);
  return (field !== undefined && DAYS.has(field)) || gaugeFieldOf(heading) === "due" || SAYS_DAY.test(heading);
}

/** What may also head readings, or numbers that belong to them. */
const BESIDE_READINGS: ReadonlySet<IdentityField> = new Set(["size", "unit", "engine", "engine number"]);

/** True where a number under or beside this is no reading of a part: a day, hours, a gauge's number. */
export const isNoReading = remembered((heading): boolean => {
  const identity = identityFieldOf(heading);
  const gauge = gaugeFieldOf(heading);
  if (fieldOf(heading) === "value") return false;
  return (
    (identity !== undefined && !BESIDE_READINGS.has(identity)) || (gauge !== undefined && gauge !== "uncertainty" && gauge !== "unit") || isSource(heading)
  );
});

/** What a table is of that records the build and holds no readings, by a heading that only such a table has. */
const RECORD_WORDS = new Set(["fastener", "fasteners", "bolt", "bolts", "part number", "part no", "part nr"]);

/** A heading of a table of torques or of parts. */
export const isOfRecord = (heading: string): boolean => RECORD_WORDS.has(foldedHeading(heading));

/** A heading of money: in such a table a column that names nothing measured holds counts, hours or prices. */
export const isOfMoney = (heading: string): boolean =>
  /[€£$¥]|\b(?:prices?|costs?|amount|vat|tax|net|gross|discount|invoiced?|charged?|labou?r)\b/i.test(heading);

/** The heading of what is typed beside names of entries, where they stand in a table. */
export const isOfEntry = (heading: string): boolean => foldedHeading(heading) === "entry";

const SHOP_SHEETS = new Set(["shop", "our shop", "yard", "our yard", "workshop"]);

/** The name of a sheet that says whose paper it is. */
export const isShopSheet = (name: string): boolean => SHOP_SHEETS.has(foldedHeading(name));

const SHOP_FIELDS = byWord<"name" | "address" | "contact">({
  name: ["shop", "shop name", "name of the shop", "yard", "yard name", "name"],
  address: ["address", "address line 1", "address line 2", "street", "town", "city", "postcode", "country"],
  contact: ["telephone", "phone", "e-mail", "email", "web page", "website"],
});

/** What an entry of that sheet stands for. */
export const shopFieldOf = (name: string): "name" | "address" | "contact" | undefined => SHOP_FIELDS.get(foldedHeading(name));
