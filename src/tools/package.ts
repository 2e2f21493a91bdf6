/**
 * `npm run package -- --url https://host/path`: the add-in's files for a web server of one's own, and
 * the manifest for that address. The same sources and address make the same bytes.
 */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { Command, Option } from "commander";
import { logErrorMessage } from "office-addin-cli";
import { buildAddin, type OfficeJs, sizes } from "./build.ts";
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
  refuseForeign(out);
  rmSync(out, { recursive: true, force: true });
  const packages = await buildAddin(out, officeJs);
  writeFileSync(join(out, "THIRD-PARTY-LICENSES"), licencesOf(packages));
  const manifest = manifestFor(address);
  writeFileSync(join(out, "manifest.xml"), manifest);
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string };
  const faults = manifestFaults(manifest, { fileOf: filesUnder(out, address), version });
  if (faults.length > 0) throw new ToolRefusal(`The manifest is not right: ${faults.join("; ")}.`);
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
    .requiredOption("--url <address>", "https address of the folder that will hold the files")
    .addOption(
      new Option("--office-js <where>", "office.js from Microsoft's network, or beside the add-in for networks that are closed")
        .choices(["cdn", "local"])
        .default("cdn"),
    )
    .option("--out <folder>", "where to write", relative(process.cwd(), PACKAGE))
    .parse();
  const options = command.opts<Options>();
  const out = resolve(options.out);
  try {
    await packageAddin({ ...options, out });
    const total = sizes(out).reduce((sum, { bytes }) => sum + bytes, 0);
    console.log(`Wrote ${relative(process.cwd(), out)}: ${Math.round(total / 1024)} KB${options.officeJs === "local" ? " and office.js" : ""}.`);
    console.log(`Copy everything in it to ${addressOf(options.url)} and give manifest.xml to Excel (see DEVELOPERS.md, "Into Excel").`);
  } catch (error) {
    if (!(error instanceof ToolRefusal)) throw error;
    logErrorMessage(error.message);
    process.exitCode = 2;
  }
}
