/**
 * `npm run sideload`: builds, serves the build at https://localhost with a development certificate and
 * says how Excel gets to it on this system. Microsoft's own starter (office-addin-debugging) is not
 * used: it brings native code that has to be compiled on installing.
 */
import { spawnSync } from "node:child_process";
import { X509Certificate } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { Command } from "commander";
import { logErrorMessage, parseNumber } from "office-addin-cli";
import { buildAddin, DIST } from "./build.ts";
import { serveFolder } from "./dev-server.ts";
import { DEVELOPMENT_PORT, manifestFor, ToolRefusal } from "./manifest.ts";

interface Options {
  port: number;
  cert?: string;
  key?: string;
}

/** Where Microsoft's tool for development certificates puts the one for localhost. */
const CERTIFICATES = ".office-addin-dev-certs";
const CERTIFICATE_TOOL = "office-addin-dev-certs@3";

export function developmentPort(text: string): number {
  // The helper alone would read "3553x" as 3553.
  const port = /^\d+$/.test(text) ? parseNumber(text) : undefined;
  if (port === undefined || port < 1 || port > 65535) throw new ToolRefusal(`"${text}" is not a port: give a whole number from 1 to 65535.`);
  return port;
}

/** The certificate given, or the one of Microsoft's tool, which is fetched to make one where there is none or it has run out. */
export function certificateFor(
  { cert, key }: Omit<Options, "port">,
  home = homedir(),
  fetchTool = installCertificate,
  now = new Date(),
): { cert: Buffer; key: Buffer } {
  if ((cert === undefined) !== (key === undefined)) throw new ToolRefusal("A certificate of your own needs both --cert and --key.");
  const folder = join(home, CERTIFICATES);
  const files = { cert: cert ?? join(folder, "localhost.crt"), key: key ?? join(folder, "localhost.key") };
  if (cert === undefined && !holds(files.cert, now)) {
    fetchTool();
    if (!holds(files.cert, now)) {
      throw new ToolRefusal(
        `There is no valid development certificate in ${folder}. Run "npx ${CERTIFICATE_TOOL} install" once with a connection, or give a certificate for localhost with --cert and --key.`,
      );
    }
  }
  for (const [name, file] of Object.entries(files)) if (!existsSync(file)) throw new ToolRefusal(`There is no file ${file} for --${name}.`);
  return { cert: readFileSync(files.cert), key: readFileSync(files.key) };
}

/** The tool's certificates run out after 30 days. */
const holds = (file: string, now: Date): boolean => existsSync(file) && new Date(new X509Certificate(readFileSync(file)).validTo) > now;

/** Asks the person, through their system, to trust the new certificate. */
function installCertificate(): void {
  console.log(`No valid development certificate yet: fetching ${CERTIFICATE_TOOL} to make one. Your system will ask whether to trust it.`);
  spawnSync("npx", ["--yes", CERTIFICATE_TOOL, "install"], { stdio: "inherit", shell: process.platform === "win32" });
}

/** Excel on the Mac reads the manifests in this folder when it starts. */
export const macFolder = (home: string): string => join(home, "Library", "Containers", "com.microsoft.Excel", "Data", "Documents", "wef");

/** What the person does to get the add-in into Excel, for each system. */
export function steps(platform: NodeJS.Platform, manifest: string): string[] {
  const web = `Excel on the web: Home > Add-ins > More Add-ins > My Add-ins > Manage My Add-ins > Upload My Add-in, and choose ${manifest}`;
  if (platform === "darwin") return ["Excel for Mac: restart it, then Home > Add-ins > Developer Add-ins > Crosshatch", web];
  if (platform !== "win32") return [web];
  return [
    `Excel for Windows, once: share the folder ${dirname(manifest)} (Properties > Sharing) and note its network path (\\\\computer\\folder)`,
    "then in Excel: File > Options > Trust Center > Trust Center Settings > Trusted Add-in Catalogs: add that path, tick Show in Menu, restart Excel",
    "then: Home > Add-ins > More Add-ins > Shared Folder > Crosshatch",
    web,
  ];
}

async function sideload(options: Options): Promise<void> {
  const certificate = certificateFor(options);
  const served = join(DIST, "sideload");
  rmSync(served, { recursive: true, force: true });
  await buildAddin(join(served, "files"));
  const address = `https://localhost:${options.port}/`;
  // A folder of its own: a catalogue shows every manifest in it.
  const manifest = join(served, "manifest", "crosshatch.xml");
  mkdirSync(dirname(manifest));
  writeFileSync(manifest, manifestFor(address));
  const server = await serveFolder(join(served, "files"), options.port, certificate);
  console.log(`Serving ${address}`);
  const placed = process.platform === "darwin" ? join(macFolder(homedir()), "crosshatch.xml") : undefined;
  if (placed) {
    mkdirSync(dirname(placed), { recursive: true });
    copyFileSync(manifest, placed);
  }
  for (const [i, step] of steps(process.platform, manifest).entries()) console.log(`${i + 1}. ${step}.`);
  console.log("Ctrl-C stops it.");
  const stop = () => {
    if (placed) rmSync(placed, { force: true });
    server.close();
    server.closeAllConnections();
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const command = new Command("npm run sideload --")
    .description("Serves the add-in from this machine and says how to open it in Excel.")
    .option("--port <number>", "port of https://localhost", String(DEVELOPMENT_PORT))
    .option("--cert <file>", "certificate for localhost, PEM")
    .option("--key <file>", "its key, PEM")
    .parse();
  try {
    const { port, ...rest } = command.opts<{ port: string; cert?: string; key?: string }>();
    await sideload({ ...rest, port: developmentPort(port) });
  } catch (error) {
    if (!(error instanceof ToolRefusal)) throw error;
    logErrorMessage(error.message);
    process.exitCode = 2;
  }
}
