/**
 * `npm run generate`: writes the generated parts of the product, then those that rest on the tests: in DEVELOPERS.md the picture of the
 * folders, the table of the hosts and the functions that are refused, the figures that the long tasks have kept (`test/FIGURES.md`), and the page of outside checks (`test/reference/README.md`).
 * With `--check` it writes nothing and fails when a file differs from what it would write.
 */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { between, productParts, specFiles, specsOf } from "../../src/tools/generated.ts";
import { root } from "../../src/tools/paths.ts";
import { FOLDERS } from "./allowed-imports.ts";
import { figuresTable, keptFigures } from "./figures.ts";
import { layersText } from "./layers.ts";

const LAYERS = ["<!-- layers: made by `npm run generate` from what each folder may import -->", "<!-- end of layers -->"] as const;
const HOSTS = ["<!-- hosts: made by `npm run generate` from what each adapter says of itself -->", "<!-- end of hosts -->"] as const;
const REFUSED = ["<!-- refused: made by `npm run generate`, by trying each -->", "<!-- end of refused -->"] as const;
const FIGURES = ["<!-- figures: made by `npm run generate` from what the tasks have kept -->", "<!-- end of figures -->"] as const;

/** The contributors' page, the figures, and the page of outside checks. The last calculates with the index as it stands, so that must be right before this is asked. */
async function testParts(): Promise<Map<string, string>> {
  const developers = join(root, "DEVELOPERS.md");
  const layers = between(readFileSync(developers, "utf8"), LAYERS, layersText(FOLDERS), "DEVELOPERS.md");
  // They lead to the index of functions, which may only now have been written.
  const [{ hostsTable }, { referencePage }, { refusedText }] = [
    await import("./hosts.ts"),
    await import("../reference/page.ts"),
    await import("./refused-functions.ts"),
  ];
  const hosts = between(layers, HOSTS, hostsTable(), "DEVELOPERS.md");
  const figures = join(root, "test", "FIGURES.md");
  return new Map([
    [developers, between(hosts, REFUSED, refusedText(), "DEVELOPERS.md")],
    [figures, between(readFileSync(figures, "utf8"), FIGURES, figuresTable(keptFigures()), "test/FIGURES.md")],
    [join(root, "test", "reference", "README.md"), referencePage(await specsOf(specFiles()))],
  ]);
}

const differing = (wanted: ReadonlyMap<string, string>): string[] =>
  [...wanted].filter(([path, text]) => !existsSync(path) || readFileSync(path, "utf8") !== text).map(([path]) => path);

/** Paths of generated files that are not as they should be. */
export async function stale(): Promise<string[]> {
  const paths = differing(await productParts());
  return paths.length > 0 ? paths : differing(await testParts());
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  if (process.argv.includes("--check")) {
    const paths = await stale();
    for (const path of paths) console.error(`${path} is not what the specs make: run npm run generate`);
    process.exitCode = paths.length ? 1 : 0;
  } else {
    for (const make of [productParts, testParts]) for (const [path, text] of await make()) writeFileSync(path, text);
  }
}
