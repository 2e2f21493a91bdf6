import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./paths.ts";

/** Where the add-in is served from while it is worked on; the manifest in the repository says so. */
export const DEVELOPMENT_PORT = 3553;
export const DEVELOPMENT_ADDRESS = `https://localhost:${DEVELOPMENT_PORT}/`;

export const manifestFile = join(root, "manifest.xml");

/** The manifest for another address, which ends in `/`. */
export function manifestFor(address: string, manifest = readFileSync(manifestFile, "utf8")): string {
  const escaped = address.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
  return manifest.replaceAll(DEVELOPMENT_ADDRESS, escaped);
}

/** Why something cannot be done as it was asked for, as a whole sentence for people. */
export class ToolRefusal extends Error {}

/** The web address of a folder, ready for file names: https, without a question or a fragment. */
export function addressOf(url: string): string {
  if (!URL.canParse(url)) throw new ToolRefusal(`"${url}" is not a web address: it should look like https://files.example.org/crosshatch.`);
  const address = new URL(url);
  if (address.protocol !== "https:") throw new ToolRefusal(`"${url}" does not start with https://. Excel loads add-ins over https only.`);
  if (address.username || address.password) throw new ToolRefusal("The address holds a user name or a password, which everybody with the manifest could read.");
  if (address.search || address.hash) throw new ToolRefusal(`"${url}" has a part behind ? or #: give the address of the folder alone.`);
  return address.href.endsWith("/") ? address.href : `${address.href}/`;
}
