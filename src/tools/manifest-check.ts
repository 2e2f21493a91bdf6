/**
 * The add-in's manifest against what Office's schemas and reference ask of it, without a network.
 * Before a release Microsoft's own service has the last word: `npx office-addin-manifest validate manifest.xml`.
 *
 * Order and lengths: OfficeAppManifestV1_1.xsd, TaskPaneAppVersionOverridesV1_0.xsd and
 * OfficeAppBasicTypesV1_0.xsd (OfficeDev/office-js-docs-pr, docs/overview/schemas/taskpane); that icons and a
 * support address must be there: Microsoft's certification policies for its marketplace, 1100 and 1120;
 * Runtimes before the form factors: "Configure your Office Add-in to use a shared runtime".
 */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { NAMESPACE } from "../core/define.ts";
import { DEVELOPMENT_ADDRESS, manifestFile } from "./manifest.ts";
import { root } from "./paths.ts";
import { child, type Element, parseXml, walk } from "./xml-tree.ts";

/** Children of an element in the order the schemas ask for; those with `!` must be there. */
const ORDER: Readonly<Record<string, string>> = {
  OfficeApp:
    "Id! AlternateId Version! ProviderName! DefaultLocale! DisplayName! Description! IconUrl! HighResolutionIconUrl! SupportUrl! AppDomains Hosts Requirements DefaultSettings! Permissions! Dictionary VersionOverrides",
  DefaultSettings: "SourceLocation!",
  VersionOverrides: "Description Requirements Hosts! Resources! WebApplicationInfo EquivalentAddins",
  Runtimes: "Runtime!",
  Script: "SourceLocation!",
  Page: "SourceLocation!",
  Metadata: "SourceLocation!",
  GetStarted: "Title! Description! LearnMoreUrl!",
  OfficeTab: "Group!",
  Group: "Label! Icon! Control!",
  Control: "Label! Supertip! Icon! Action!",
  Supertip: "Title! Description!",
  Action: "TaskpaneId SourceLocation! Title",
  Resources: "Images Urls ShortStrings LongStrings",
};
const BY_TYPE: Readonly<Record<string, string>> = {
  "Host Workbook": "Runtimes! AllFormFactors! DesktopFormFactor!",
  "ExtensionPoint CustomFunctions": "Script! Page! Metadata! Namespace!",
  "ExtensionPoint PrimaryCommandSurface": "OfficeTab",
};

const LONGEST = { id: 32, ShortStrings: 125, LongStrings: 250, url: 2048 };
const UUID = /^[\da-f]{8}-[\da-f]{4}-[1-5][\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/i;
const VERSION = /^\d{1,5}(?:\.\d{1,5}){0,3}$/;
const ICON_SIZES = [16, 20, 24, 32, 40, 48, 64, 80];
const NEEDED_ICONS = [16, 32, 80];

export interface Expected {
  /** Bytes of the file that a URL of the manifest stands for, `undefined` where there is none. */
  fileOf(url: string): Uint8Array | undefined;
  /** Version of the package. */
  version: string;
}

/** What is wrong with a manifest, as sentences; none when all is well. */
export function manifestFaults(xml: string, { fileOf, version }: Expected): string[] {
  let app: Element;
  try {
    app = parseXml(xml);
  } catch (error) {
    return [`It is not well-formed XML: ${(error as Error).message}`];
  }
  const elements = [...walk(app)];
  return [
    ...elements.flatMap(orderFaults),
    ...identityFaults(app, version),
    ...resourceFaults(elements),
    ...urlFaults(elements, fileOf),
    ...iconFaults(app, elements, fileOf),
    ...runtimeFaults(elements),
  ];
}

function orderFaults(element: Element): string[] {
  const rule = BY_TYPE[`${element.name} ${element.attributes["xsi:type"]}`] ?? ORDER[element.name];
  if (rule === undefined) return [];
  const where = `${element.name} (line ${element.line})`;
  const names = rule.split(" ").map((name) => name.replace("!", ""));
  const has = element.children.map(({ name }) => name);
  const faults = has.filter((name) => !names.includes(name)).map((name) => `${where} must not hold ${name}`);
  for (const name of rule.split(" ").filter((one) => one.endsWith("!")))
    if (!has.includes(name.slice(0, -1))) faults.push(`${where} lacks ${name.slice(0, -1)}`);
  const places = has.map((name) => names.indexOf(name)).filter((place) => place >= 0);
  const late = places.findIndex((place, i) => i > 0 && place < places[i - 1]!);
  if (late > 0) faults.push(`${where} has ${names[places[late]!]} behind ${names[places[late - 1]!]}, which must come after it`);
  return faults;
}

function identityFaults(app: Element, version: string): string[] {
  const text = (name: string) => child(app, name)?.text.trim() ?? "";
  const faults: string[] = [];
  if (!UUID.test(text("Id"))) faults.push(`Id is not a GUID: ${text("Id")}`);
  if (!VERSION.test(text("Version"))) faults.push(`Version is not one to four numbers with points: ${text("Version")}`);
  else if (text("Version") !== `${version}.0`) faults.push(`Version is ${text("Version")}, but the package's is ${version}`);
  if (app.attributes["xsi:type"] !== "TaskPaneApp") faults.push("OfficeApp is not a TaskPaneApp");
  if (!child(app, "Hosts")?.children.some((host) => host.attributes.Name === "Workbook")) faults.push("Hosts does not name Workbook");
  const overrides = child(app, "VersionOverrides");
  if (overrides?.attributes["xsi:type"] !== "VersionOverridesV1_0") faults.push("VersionOverrides is not VersionOverridesV1_0");
  const sets = [...walk(app)].filter(({ name }) => name === "Set").map(({ attributes }) => attributes.Name);
  for (const set of ["SharedRuntime", "CustomFunctionsRuntime"]) if (!sets.includes(set)) faults.push(`Requirements does not ask for ${set}`);
  return faults;
}

const RESOURCE_KINDS = ["Images", "Urls", "ShortStrings", "LongStrings"];
/** Which list of resources each element's `resid` points into. */
const KIND_OF: Readonly<Record<string, string>> = {
  Image: "Images",
  SourceLocation: "Urls",
  Runtime: "Urls",
  FunctionFile: "Urls",
  LearnMoreUrl: "Urls",
  Label: "ShortStrings",
  Title: "ShortStrings",
  Namespace: "ShortStrings",
  Description: "LongStrings",
}; // prettier-ignore

function resourceFaults(elements: readonly Element[]): string[] {
  const kinds = new Map<string, string>();
  const faults: string[] = [];
  const lists = elements.filter(({ name }) => RESOURCE_KINDS.includes(name));
  for (const list of lists) {
    for (const { attributes } of list.children) {
      const { id = "", DefaultValue = "" } = attributes;
      if (kinds.has(id)) faults.push(`The resource ${id} is there twice`);
      kinds.set(id, list.name);
      if (id.length === 0 || id.length > LONGEST.id) faults.push(`The resource id ${id} has ${id.length} characters; 1 to ${LONGEST.id} are allowed`);
      const longest = LONGEST[list.name as "ShortStrings"] ?? LONGEST.url;
      if (DefaultValue.length === 0 || DefaultValue.length > longest)
        faults.push(`The text of ${id} has ${DefaultValue.length} characters; 1 to ${longest} are allowed`);
    }
  }
  const used = new Set<string>();
  for (const { name, attributes, line } of elements) {
    const { resid } = attributes;
    if (resid === undefined) continue;
    used.add(resid);
    if (!kinds.has(resid)) faults.push(`${name} (line ${line}) points to ${resid}, which is no resource`);
    else if (kinds.get(resid) !== KIND_OF[name])
      faults.push(`${name} (line ${line}) points to ${resid} among ${kinds.get(resid)}; it must be one of ${KIND_OF[name]}`);
  }
  for (const id of kinds.keys()) if (!used.has(id)) faults.push(`Nothing points to the resource ${id}`);
  return faults;
}

/** Attributes that hold an address, with the element that says what it is for. */
function addresses(elements: readonly Element[]): { url: string; line: number }[] {
  const own = ["IconUrl", "HighResolutionIconUrl", "SupportUrl", "SourceLocation", "Image", "Url"];
  return elements
    .filter(({ name, attributes }) => own.includes(name) && attributes.DefaultValue !== undefined)
    .map(({ attributes, line }) => ({ url: attributes.DefaultValue!, line }));
}

function urlFaults(elements: readonly Element[], fileOf: Expected["fileOf"]): string[] {
  return addresses(elements).flatMap(({ url, line }) => {
    if (!URL.canParse(url) || new URL(url).protocol !== "https:") return [`The address ${url} (line ${line}) is not an https address`];
    return fileOf(url) ? [] : [`The address ${url} (line ${line}) stands for no file of the build`];
  });
}

function iconFaults(app: Element, elements: readonly Element[], fileOf: Expected["fileOf"]): string[] {
  const faults: string[] = [];
  const urls = new Map(
    elements.filter(({ name, attributes }) => name === "Image" && attributes.id).map(({ attributes }) => [attributes.id!, attributes.DefaultValue!]),
  );
  const check = (what: string, url: string | undefined, size: number) => {
    const file = url === undefined ? undefined : fileOf(url);
    const found = file && pngSize(file);
    if (file && found !== `${size}×${size}`) faults.push(`${what} must be ${size}×${size} pixels; ${url} is ${found ?? "no PNG"}`);
  };
  check("IconUrl", child(app, "IconUrl")?.attributes.DefaultValue, 32);
  check("HighResolutionIconUrl", child(app, "HighResolutionIconUrl")?.attributes.DefaultValue, 64);
  for (const icon of elements.filter(({ name }) => name === "Icon")) {
    const sizes = icon.children.map(({ attributes }) => Number(attributes.size));
    for (const size of NEEDED_ICONS) if (!sizes.includes(size)) faults.push(`Icon (line ${icon.line}) lacks the size ${size}`);
    for (const { attributes, line } of icon.children) {
      const size = Number(attributes.size);
      if (!ICON_SIZES.includes(size)) faults.push(`Image (line ${line}) has the size ${attributes.size}, which Office does not know`);
      check(`Image (line ${line})`, urls.get(attributes.resid ?? ""), size);
    }
  }
  return faults;
}

/** Width and height from the header of a PNG file. */
function pngSize(file: Uint8Array): string | undefined {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  return file.byteLength > 24 && view.getUint32(0) === 0x89504e47 ? `${view.getUint32(16)}×${view.getUint32(20)}` : undefined;
}

/** One page, living on when the pane is closed, runs pane and functions alike. */
function runtimeFaults(elements: readonly Element[]): string[] {
  const one = (name: string) => elements.find((element) => element.name === name);
  const faults: string[] = [];
  const { resid, lifetime } = one("Runtime")?.attributes ?? {};
  if (lifetime !== "long") faults.push("Runtime does not have the lifetime long");
  const pages = [child(one("Page"), "SourceLocation"), child(one("Action"), "SourceLocation")];
  if (pages.some((page) => page?.attributes.resid !== resid)) faults.push("Runtime, Page and Action must point to one and the same page");
  const resource = child(one("ExtensionPoint"), "Namespace")?.attributes.resid;
  const namespace = elements.find(({ attributes }) => attributes.id === resource && resource !== undefined)?.attributes.DefaultValue;
  if (namespace !== NAMESPACE) faults.push(`The namespace is ${namespace}, but functions are called ${NAMESPACE}.…`);
  return faults;
}

/** Files of a build for the addresses of its manifest. */
export function filesUnder(folder: string, address: string): Expected["fileOf"] {
  return (url) => {
    const inside = url.startsWith(address) ? join(folder, url.slice(address.length)) : "";
    return inside && existsSync(inside) ? readFileSync(inside) : undefined;
  };
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string };
  const fileOf = filesUnder(join(root, "dist"), DEVELOPMENT_ADDRESS);
  const faults = manifestFaults(readFileSync(manifestFile, "utf8"), { fileOf, version });
  for (const fault of faults) console.error(fault);
  process.exitCode = faults.length > 0 ? 1 : 0;
}
