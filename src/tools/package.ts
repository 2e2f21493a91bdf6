/**
 * `npm run package -- --url https://host/path`: the add-in's files for a web server of one's own, the
 * manifest for that address, and the server's settings. The same sources and address make the same bytes.
 * `npm run package -- --check https://host/path` looks whether they are served as Excel needs them.
 */
import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { Command, Option } from "commander";
import { logErrorMessage } from "office-addin-cli";
import { buildAddin, type OfficeJs, sizes } from "./build.ts";
import { hostingFaults } from "./check-hosting.ts";
import { hostingFiles } from "./hosting.ts";
import { licencesOf } from "./licences.ts";
import { addressOf, manifestFile, manifestFor, ToolRefusal } from "./manifest.ts";
import { filesUnder, manifestFaults } from "./manifest-check.ts";
import { root } from "./paths.ts";

export const PACKAGE = join(root, "dist", "package");

interface Options {
  url: string;
  officeJs: OfficeJs;
  out: string;
}

export async function packageAddin({ url, officeJs, out }: Options): Promise<void> {
  const address = addressOf(url);
  const version = packageVersion();
  refuseForeign(out);
  rmSync(out, { recursive: true, force: true });
  const packages = await buildAddin(out, officeJs);
  writeFileSync(join(out, "THIRD-PARTY-LICENSES"), licencesOf(packages));
  const manifest = manifestFor(address);
  writeFileSync(join(out, "manifest.xml"), manifest);
  for (const [name, text] of Object.entries(hostingFiles(address, intoVersion(out, version)))) writeFileSync(join(out, name), text);
  const faults = manifestFaults(manifest, { fileOf: filesUnder(out, address), version });
  if (faults.length > 0) throw new ToolRefusal(`The manifest is not right: ${faults.join("; ")}.`);
}

const packageVersion = (): string => (JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string }).version;

/**
 * Puts what the page loads of ours into a folder named after version and content, so that it may be kept
 * for ever and an update still arrives. Excel itself asks for functions.js by the name in the manifest.
 */
function intoVersion(out: string, version: string): string {
  const own = readdirSync(out).filter((name) => /\.(?:js|css)$/.test(name));
  const hash = createHash("sha256");
  for (const name of own.sort()) hash.update(name).update(readFileSync(join(out, name)));
  const folder = `v${version}-${hash.digest("hex").slice(0, 8)}`;
  mkdirSync(join(out, folder));
  for (const name of own) {
    if (name === "functions.js") cpSync(join(out, name), join(out, folder, name));
    else renameSync(join(out, name), join(out, folder, name));
  }
  const page = join(out, "pane.html");
  writeFileSync(
    page,
    readFileSync(page, "utf8").replace(/(src|href)="([^"/]+\.(?:js|css))"/g, (_, part: string, name: string) => `${part}="${folder}/${name}"`),
  );
  return folder;
}

const ID = /<Id>[^<]+<\/Id>/;

/** A folder with something else in it is left alone. */
function refuseForeign(out: string): void {
  if (!existsSync(out) || readdirSync(out).length === 0) return;
  const earlier = join(out, "manifest.xml");
  const own = ID.exec(readFileSync(manifestFile, "utf8"))![0];
  if (!existsSync(earlier) || !readFileSync(earlier, "utf8").includes(own)) {
    throw new ToolRefusal(`The folder ${out} holds something other than an earlier package: give an empty one.`);
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const command = new Command("npm run package --")
    .description("Writes the add-in for a web address of your own, with the manifest that goes with it.")
    .option("--url <address>", "https address of the folder that will hold the files")
    .option("--check <address>", "look whether an address serves them as Excel needs them, and write nothing")
    .addOption(
      new Option("--office-js <where>", "office.js from Microsoft's network, or beside the add-in for networks that are closed")
        .choices(["cdn", "local"])
        .default("cdn"),
    )
    .option("--out <folder>", "where to write", relative(process.cwd(), PACKAGE))
    .parse();
  const options = command.opts<Partial<Options> & Pick<Options, "officeJs" | "out"> & { check?: string }>();
  const out = resolve(options.out);
  try {
    if (options.check !== undefined) await tellFaults(addressOf(options.check));
    else await writePackage({ ...options, out });
  } catch (error) {
    if (!(error instanceof ToolRefusal)) throw error;
    logErrorMessage(error.message);
    process.exitCode = 2;
  }
}

async function tellFaults(address: string): Promise<void> {
  const faults = await hostingFaults(address, packageVersion());
  for (const fault of faults) console.log(fault);
  console.log(
    faults.length === 0
      ? `${address} serves everything as Excel needs it.`
      : `See src/addin/into-excel.md, and the settings that npm run package writes beside the files.`,
  );
  process.exitCode = faults.length === 0 ? 0 : 1;
}

async function writePackage({ url, officeJs, out }: Partial<Options> & Pick<Options, "officeJs" | "out">): Promise<void> {
  if (url === undefined)
    throw new ToolRefusal("The address is not given: --url https://… of the folder that will hold the files, or --check https://… of one that does.");
  await packageAddin({ url, officeJs, out });
  const total = sizes(out).reduce((sum, { bytes }) => sum + bytes, 0);
  console.log(`Wrote ${relative(process.cwd(), out)}: ${Math.round(total / 1024)} KB${officeJs === "local" ? " and office.js" : ""}.`);
  console.log(`Copy everything in it to ${addressOf(url)}, with the settings that your web server reads (.htaccess, web.config, nginx.conf or _headers).`);
  console.log(`Then npm run package -- --check ${addressOf(url)}, and give manifest.xml to Excel as src/addin/into-excel.md says.`);
}
