/** `npm run package -- --check https://…`: whether an address serves the add-in as Excel needs it. */
import { ToolRefusal } from "./manifest.ts";
import { parseXml, walk } from "./xml-tree.ts";

interface Answer {
  status: number;
  type: string;
  header(name: string): string;
  text: string;
  /** Where it came from in the end. */
  url: string;
}

/** A day: what Excel keeps longer than that hides an update. */
const LONGEST = 86_400;

/** What is missing at the address, which ends in `/`, as sentences; none when all is well. `version` is that of this package. */
export async function hostingFaults(address: string, version: string): Promise<string[]> {
  const { faults, manifest } = await manifestAt(address, version);
  const named = new Set([`${address}pane.html`, `${address}functions.json`, `${address}functions.js`, ...manifest.filter((url) => url.startsWith(address))]);
  for (const url of named) {
    const answer = await answerOf(url);
    if (typeof answer === "string") {
      faults.push(answer);
      continue;
    }
    const file = url.slice(address.length);
    faults.push(...fileFaults(file, answer));
    if (file === "pane.html") faults.push(...(await pageFaults(address, answer)));
    if (file === "functions.json") faults.push(...listFaults(answer));
  }
  return faults;
}

async function manifestAt(address: string, version: string): Promise<{ faults: string[]; manifest: string[] }> {
  const answer = await answerOf(`${address}manifest.xml`);
  if (typeof answer === "string") return { faults: [answer], manifest: [] };
  try {
    const elements = [...walk(parseXml(answer.text))];
    const urls = elements.flatMap(({ attributes: { DefaultValue = "" } }) => (/^https?:\/\//.test(DefaultValue) ? [DefaultValue] : []));
    const foreign = urls.find((url) => !url.startsWith(address) && /\/(?:pane\.html|functions\.js(?:on)?)$/.test(url));
    const stated = elements.find(({ name }) => name === "Version")?.text.trim();
    const faults: string[] = [];
    if (foreign) faults.push(`manifest.xml is for another address: it names ${foreign}. Run npm run package -- --url ${address} and copy its files here.`);
    if (stated !== `${version}.0`)
      faults.push(`manifest.xml is of version ${stated}, and this package is ${version}: an update has not been copied, or something keeps the old one.`);
    return { faults, manifest: urls };
  } catch {
    return { faults: [`manifest.xml is not XML: the server answers with ${answer.type || "something"} instead, perhaps a page of its own.`], manifest: [] };
  }
}

const TYPES: Readonly<Record<string, RegExp>> = {
  html: /^text\/html\b/,
  js: /^(?:text|application)\/javascript\b/,
  json: /^application\/json\b/,
  css: /^text\/css\b/,
  png: /^image\/png\b/,
  xml: /./,
};

function fileFaults(file: string, answer: Answer): string[] {
  const faults: string[] = [];
  const kind = file.split(".").at(-1)!;
  if (!(TYPES[kind] ?? /./).test(answer.type)) faults.push(`${file} is served as ${answer.type || "nothing in particular"}: set Content-Type for .${kind}.`);
  if (/\.js(?:on)?$/.test(file) && answer.header("access-control-allow-origin") !== "*")
    faults.push(`${file} may not be fetched from other addresses, as Excel on the web does: set Access-Control-Allow-Origin: *.`);
  const cache = answer.header("cache-control");
  const age = Number(/max-age=(\d+)/.exec(cache)?.[1] ?? 0);
  if (kind === "png" && /no-cache|no-store|max-age=0/.test(cache))
    faults.push(`${file} may not be kept (Cache-Control: ${cache}): Office then shows an icon of its own.`);
  if (/^(?:pane\.html|functions\.js(?:on)?)$/.test(file) && (age > LONGEST || !/no-cache|no-store|max-age/.test(cache)))
    faults.push(
      `${file} ${age > LONGEST ? `is kept for ${Math.round(age / LONGEST)} days` : "says nothing of how long it may be kept"}: set Cache-Control: no-cache, or an update may not arrive.`,
    );
  return faults;
}

async function pageFaults(address: string, page: Answer): Promise<string[]> {
  const faults: string[] = [];
  const frames = page.header("x-frame-options");
  if (frames) faults.push(`pane.html may not stand in a frame, in which Excel on the web shows it: take X-Frame-Options: ${frames} away.`);
  const ancestors = /frame-ancestors ([^;]*)/.exec(page.header("content-security-policy"))?.[1];
  if (ancestors !== undefined && !ancestors.includes("*") && !ancestors.includes("office"))
    faults.push(
      `pane.html may only stand in frames of ${ancestors}: take frame-ancestors out of the header Content-Security-Policy, or allow Excel's addresses in it.`,
    );
  const names = [...page.text.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, name]) => name!);
  if (!names.some((name) => name.endsWith("pane.js"))) faults.push("pane.html is not the pane: the server answers with a page of its own.");
  for (const name of names) {
    const url = new URL(name, `${address}pane.html`).href;
    if (!url.startsWith(address)) continue;
    const answer = await answerOf(url);
    faults.push(...(typeof answer === "string" ? [answer] : fileFaults(name, answer)));
  }
  return faults;
}

function listFaults({ text }: Answer): string[] {
  try {
    const { functions } = JSON.parse(text) as { functions?: unknown };
    return Array.isArray(functions) && functions.length > 0 ? [] : ["functions.json names no functions."];
  } catch {
    return ["functions.json is not JSON: the server answers with something else, perhaps a page of its own."];
  }
}

/** What a file's address answers, or a sentence why there is none. */
async function answerOf(url: string): Promise<Answer | string> {
  const file = url.split("/").at(-1);
  try {
    const response = await fetch(url, { headers: { Origin: "https://excel.officeapps.live.com" }, redirect: "follow" });
    const answer = {
      ...{ status: response.status, type: response.headers.get("content-type") ?? "", text: await response.text(), url: response.url },
      header: (name: string) => response.headers.get(name) ?? "",
    };
    if (answer.status !== 200) return `${file} is not there: ${url} answers ${answer.status}.`;
    return answer.url === url ? answer : `${file} is not there: ${url} leads on to ${answer.url}, perhaps a page to sign in.`;
  } catch (error) {
    const { cause, message } = error as Error & { cause?: { code?: string; message?: string } };
    const why = cause?.code ?? cause?.message ?? message;
    if (/CERT|SELF_SIGNED|ALTNAME|UNABLE_TO_VERIFY/.test(String(why)))
      throw new ToolRefusal(`The certificate of ${new URL(url).host} is not trusted (${why}): Excel shows nothing from there.`);
    throw new ToolRefusal(`${new URL(url).host} cannot be reached (${why}).`);
  }
}
