import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { ICONS } from "../../src/tools/icons.ts";
import { DEVELOPMENT_ADDRESS, manifestFile } from "../../src/tools/manifest.ts";
import { manifestFaults } from "../../src/tools/manifest-check.ts";
import { parseXml, walk } from "../../src/tools/xml-tree.ts";

const xml = readFileSync(manifestFile, "utf8");
const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
const BUILT = ["pane.html", "functions.js", "functions.json", "support.html"];

/** Icons as they are in the repository; the other files of a build only have to be there. */
function fileOf(url: string): Uint8Array | undefined {
  const name = url.replace(DEVELOPMENT_ADDRESS, "");
  if (BUILT.includes(name)) return new Uint8Array(1);
  return name.startsWith("icons/icon-") ? readFileSync(`${ICONS}/${name.slice("icons/".length)}`) : undefined;
}

const faults = (manifest: string, expected = { fileOf, version }) => manifestFaults(manifest, expected);
/** The manifest with one thing changed; the change must find its place. */
function changed(from: string | RegExp, to: string): string {
  const result = xml.replace(from, to);
  expect(result).not.toBe(xml);
  return result;
}

test("the manifest has no fault", () => {
  expect(faults(xml)).toEqual([]);
});

/** Microsoft's reader, in a process of its own: jest cannot load one of the modules that it needs. */
function readByOffice(file: string): Record<string, unknown> {
  const script = `require("office-addin-manifest").OfficeAddinManifest.readManifestFile(process.argv[1]).then((info) => console.log(JSON.stringify(info)))`;
  return JSON.parse(execFileSync(process.execPath, ["-e", script, file], { encoding: "utf8" }));
}

test("Microsoft's own reader finds in it what we put there", () => {
  const info = readByOffice(manifestFile);
  expect(info).toMatchObject({
    displayName: "Crosshatch",
    officeAppType: "TaskPaneApp",
    hosts: ["Workbook"],
    permissions: "ReadWriteDocument",
    version: `${version}.0`,
    iconUrl: `${DEVELOPMENT_ADDRESS}icons/icon-32.png`,
    highResolutionIconUrl: `${DEVELOPMENT_ADDRESS}icons/icon-64.png`,
    defaultSettings: { sourceLocation: `${DEVELOPMENT_ADDRESS}pane.html` },
  });
  expect(info.id).toMatch(/^[\da-f-]{36}$/);
});

// Volume-licensed Excel 2021 has SharedRuntime 1.1 and not 1.2 (Microsoft, "Shared runtime requirement sets"), and does
// not run custom functions ("Create custom functions in Excel"): it must not offer the pane alone.
test("functions and pane ask for the sets that they use", () => {
  const sets = [...walk(parseXml(xml))].filter(({ name }) => name === "Set").map(({ attributes }) => `${attributes.Name} ${attributes.MinVersion}`);
  expect(sets).toEqual(["SharedRuntime 1.2", "CustomFunctionsRuntime 1.3", "ExcelApi 1.12"]);
});

test.each<[string, string | RegExp, string, string]>([
  ["a tag left open", "</Hosts>", "", "It is not well-formed XML"],
  ["an id that is no GUID", /<Id>.*<\/Id>/, "<Id>crosshatch</Id>", "Id is not a GUID: crosshatch"],
  ["another version than the package's", /<Version>.*<\/Version>/, "<Version>9.0.0.0</Version>", "Version is 9.0.0.0, but the package's is"],
  ["a version in words", /<Version>.*<\/Version>/, "<Version>one</Version>", "Version is not one to four numbers with points: one"],
  ["no address for help", /<SupportUrl .*\/>/, "", "OfficeApp (line 2) lacks SupportUrl"],
  ["no icon", /<IconUrl .*\/>/, "", "OfficeApp (line 2) lacks IconUrl"],
  ["no provider", /<ProviderName>.*<\/ProviderName>/, "", "OfficeApp (line 2) lacks ProviderName"],
  [
    "elements out of order",
    /(<ProviderName>.*<\/ProviderName>)\s*(<DefaultLocale>.*<\/DefaultLocale>)/,
    "$2$1",
    "OfficeApp (line 2) has ProviderName behind DefaultLocale",
  ],
  ["runtimes behind the form factors", /(\s*<Runtimes>[\s\S]*<\/Runtimes>)([\s\S]*<\/DesktopFormFactor>)/, "$2$1", "has Runtimes behind DesktopFormFactor"],
  ["an element that does not belong", "<Supertip>", "<Icon/><Supertip>", "has Supertip behind Icon"],
  ["an element Office does not know there", "<TaskpaneId>", "<Text/><TaskpaneId>", "must not hold Text"],
  ["a resid without a resource", 'resid="OpenPane.Tip"', 'resid="OpenPane.Hint"', "points to OpenPane.Hint, which is no resource"],
  [
    "a resid of the wrong kind",
    '<Label resid="Group.Label"/>',
    '<Label resid="OpenPane.Tip"/>',
    "points to OpenPane.Tip among LongStrings; it must be one of ShortStrings",
  ],
  ["a resource nothing points to", "</bt:LongStrings>", '<bt:String id="Spare" DefaultValue="x"/></bt:LongStrings>', "Nothing points to the resource Spare"],
  [
    "a resource given twice",
    "</bt:LongStrings>",
    '<bt:String id="OpenPane.Tip" DefaultValue="x"/></bt:LongStrings>',
    "The resource OpenPane.Tip is there twice",
  ],
  ["an id of 33 characters", /Group\.Label/g, "G".repeat(33), `The resource id ${"G".repeat(33)} has 33 characters; 1 to 32 are allowed`],
  [
    "a short text of 126 characters",
    'DefaultValue="Build sheet check"',
    `DefaultValue="${"x".repeat(126)}"`,
    "The text of OpenPane.Label has 126 characters; 1 to 125 are allowed",
  ],
  ["an http address", 'id="Pane.Url" DefaultValue="https:', 'id="Pane.Url" DefaultValue="http:', "is not an https address"],
  ["an address without a file", "functions.json", "metadata.json", "stands for no file of the build"],
  [
    "an icon of the wrong size",
    'id="Icon.80" DefaultValue="https://localhost:3553/icons/icon-80.png"',
    'id="Icon.80" DefaultValue="https://localhost:3553/icons/icon-64.png"',
    "must be 80×80 pixels",
  ],
  ["an icon in a list that is too small", "icons/icon-32.png", "icons/icon-16.png", "IconUrl must be 32×32 pixels"],
  ["an icon size left out", '<bt:Image size="80" resid="Icon.80"/>', "", "lacks the size 80"],
  ["an icon size that Office does not know", 'size="64"', 'size="65"', "has the size 65, which Office does not know"],
  ["another namespace", 'DefaultValue="HATCH"', 'DefaultValue="BORE"', "The namespace is BORE, but functions are called HATCH.…"],
  ["a runtime that ends with the pane", 'lifetime="long"', 'lifetime="short"', "Runtime does not have the lifetime long"],
  ["a second page beside the runtime's", '<Runtime resid="Pane.Url"', '<Runtime resid="Functions.Script.Url"', "must point to one and the same page"],
  ["a requirement left out", /<Set Name="SharedRuntime".*\/>/, "", "Requirements does not ask for SharedRuntime"],
  ["another kind of add-in", 'xsi:type="TaskPaneApp"', 'xsi:type="ContentApp"', "OfficeApp is not a TaskPaneApp"],
  ["another host", '<Host Name="Workbook"/>', '<Host Name="Document"/>', "Hosts does not name Workbook"],
])("%s is found", (_, from, to, sentence) => {
  expect(faults(changed(from, to)).join("\n")).toContain(sentence);
});

test("a picture that is no PNG is found", () => {
  const text = new TextEncoder().encode("GIF89a and so on, long enough for a header");
  const found = faults(xml, { version, fileOf: (url) => (url.endsWith(".png") ? text : fileOf(url)) });
  expect(found).toContain(`IconUrl must be 32×32 pixels; ${DEVELOPMENT_ADDRESS}icons/icon-32.png is no PNG`);
});
