import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { hostingFaults } from "../../src/tools/check-hosting.ts";
import { FIXED, hostingFiles } from "../../src/tools/hosting.ts";
import { manifestFor } from "../../src/tools/manifest.ts";
import { root } from "../../src/tools/paths.ts";
import { child, parseXml, walk } from "../../src/tools/xml-tree.ts";
import { packaged } from "./packaged.ts";

const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string };
const TYPES: Record<string, string> = { ".html": "text/html", ".js": "text/javascript", ".json": "application/json", ".css": "text/css", ".png": "image/png" };

type Headers = Record<string, string>;
/** What the server answers to a path: more headers, another status, or another text. */
type Manner = (path: string, headers: Headers) => { status?: number; text?: string } | undefined;

let folder: string;
let versioned: string;
let server: Server;
let address: string;
let manner: Manner;

/** As the settings that come with the package say. */
const asTold: Manner = (path, headers) => {
  headers["Access-Control-Allow-Origin"] = "*";
  if (path.startsWith(`/${versioned}/`)) headers["Cache-Control"] = "public, max-age=31536000, immutable";
  else if (FIXED.includes(path.slice(1))) headers["Cache-Control"] = "no-cache";
  return undefined;
};

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "crosshatch-hosting-"));
  cpSync(await packaged(), folder, { recursive: true });
  versioned = readdirSync(folder).find((name) => name.startsWith("v"))!;
  server = createServer((request, response) => {
    const path = request.url!;
    const headers: Headers = { "Content-Type": TYPES[extname(path)] ?? "application/xml" };
    const { status = 200, text } = manner(path, headers) ?? {};
    try {
      const file = text ?? readFileSync(join(folder, path));
      response.writeHead(status, headers).end(file);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  writeFileSync(join(folder, "manifest.xml"), manifestFor(address));
}, 60_000);
afterAll(() => {
  server.close();
  server.closeAllConnections();
  rmSync(folder, { recursive: true });
});

const faults = (served: Manner) => {
  manner = served;
  return hostingFaults(address, version);
};
const asToldBut =
  (change: Manner): Manner =>
  (path, headers) => {
    asTold(path, headers);
    return change(path, headers);
  };
const at =
  (file: string, headers: Headers): Manner =>
  (path, own) =>
    void (path === `/${file}` && Object.assign(own, headers));

describe("an address is looked at", () => {
  test("and nothing is missing where it serves as the settings say", async () => {
    expect(await faults(asTold)).toEqual([]);
  });

  test("and what a plain server leaves out is told file by file", async () => {
    const found = await faults(() => undefined);
    const origin = (file: string) => `${file} may not be fetched from other addresses, as Excel on the web does: set Access-Control-Allow-Origin: *.`;
    const cache = (file: string) => `${file} says nothing of how long it may be kept: set Cache-Control: no-cache, or an update may not arrive.`;
    for (const sentence of [origin("functions.json"), origin("functions.js"), cache("pane.html"), cache("functions.json"), cache("functions.js")])
      expect(found).toContain(sentence);
  });

  test.each<[string, Manner, string]>([
    [
      "X-Frame-Options",
      at("pane.html", { "X-Frame-Options": "SAMEORIGIN" }),
      "pane.html may not stand in a frame, in which Excel on the web shows it: take X-Frame-Options: SAMEORIGIN away.",
    ],
    [
      "frame-ancestors",
      at("pane.html", { "Content-Security-Policy": "default-src 'self'; frame-ancestors 'self'" }),
      "pane.html may only stand in frames of 'self': take frame-ancestors out of the header Content-Security-Policy, or allow Excel's addresses in it.",
    ],
    [
      "a year",
      at("functions.json", { "Cache-Control": "max-age=31536000" }),
      "functions.json is kept for 365 days: set Cache-Control: no-cache, or an update may not arrive.",
    ],
    ["a type", at("functions.js", { "Content-Type": "text/plain" }), "functions.js is served as text/plain: set Content-Type for .js."],
    [
      "a picture",
      at("icons/icon-32.png", { "Cache-Control": "no-store" }),
      "icons/icon-32.png may not be kept (Cache-Control: no-store): Office then shows an icon of its own.",
    ],
  ])("and %s is told with what to set", async (_, change, sentence) => {
    expect(await faults(asToldBut(change))).toEqual([sentence]);
  });

  test("and a file that is not there is named with its address and answer", async () => {
    const found = await faults(asToldBut((path) => (path === "/functions.json" ? { status: 404 } : undefined)));
    expect(found).toEqual([`functions.json is not there: ${address}functions.json answers 404.`]);
  });

  test("and a server that answers everything with a page of its own is seen through", async () => {
    const found = await faults(asToldBut((_, headers) => Object.assign(headers, { "Content-Type": "text/html" }) && { text: "<!doctype html><p>Welcome" }));
    expect(found).toContain("manifest.xml is not XML: the server answers with text/html instead, perhaps a page of its own.");
    expect(found).toContain("functions.json is not JSON: the server answers with something else, perhaps a page of its own.");
    expect(found).toContain("pane.html is not the pane: the server answers with a page of its own.");
  });

  test("and a manifest of another version, or for another address, is told", async () => {
    const other = manifestFor("https://old.example.org/").replace(/<Version>[^<]*/, "<Version>0.0.9.0");
    const found = await faults(asToldBut((path) => (path === "/manifest.xml" ? { text: other } : undefined)));
    expect(found).toEqual([
      `manifest.xml is for another address: it names https://old.example.org/pane.html. Run npm run package -- --url ${address} and copy its files here.`,
      `manifest.xml is of version 0.0.9.0, and this package is ${version}: an update has not been copied, or something keeps the old one.`,
    ]);
  });

  test("and an address that nobody answers is a sentence", async () => {
    await expect(hostingFaults("http://127.0.0.1:9/", version)).rejects.toThrow(/^127\.0\.0\.1:9 cannot be reached/);
  });
});

describe("the settings", () => {
  const files = hostingFiles("https://files.example.org/shop/crosshatch/", "v1.2.3-0a1b2c3d");

  test("stand in the package, one for each kind of server", () => {
    expect(readdirSync(folder)).toEqual(expect.arrayContaining(Object.keys(files)));
  });

  test("for IIS are XML, which lets any address fetch, keeps versions for ever and the rest not", () => {
    const configuration = parseXml(files["web.config"]!);
    const places = configuration.children.filter(({ name }) => name === "location");
    const cache = places.map((place) => [place.attributes.path, [...walk(place)].find(({ name }) => name === "add")!.attributes.value]);
    expect(Object.fromEntries(cache)).toEqual({
      ...Object.fromEntries(FIXED.map((file) => [file, "no-cache"])),
      "v1.2.3-0a1b2c3d": "public, max-age=31536000, immutable",
    });
    const all = [...walk(child(configuration, "system.webServer")!)].filter(({ name }) => name === "add");
    expect(all.map(({ attributes }) => [attributes.name, attributes.value])).toEqual([["Access-Control-Allow-Origin", "*"]]);
  });

  test("of a _headers file name each path once, so that no two words on caching meet", () => {
    const paths = files._headers!.split("\n").filter((line) => line.startsWith("/"));
    expect(paths).toEqual(["/shop/crosshatch/*", ...FIXED.map((file) => `/shop/crosshatch/${file}`), "/shop/crosshatch/v1.2.3-0a1b2c3d/*"]);
  });

  test("for nginx open and close their blocks and name the folder of the address", () => {
    const text = files["nginx.conf"]!;
    expect(text).toContain("location ^~ /shop/crosshatch/ {");
    expect(text.split("{").length).toBe(text.split("}").length);
  });
});
