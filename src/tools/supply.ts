/** What may come in with packages: exact versions whose content is sealed, licences that allow what is done with them, no scripts that must run. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./paths.ts";

export interface LockedPackage {
  version?: string;
  integrity?: string;
  resolved?: string;
  license?: string;
  link?: boolean;
  hasInstallScript?: boolean;
  dependencies?: Record<string, string>;
  optionalDependencies?: Record<string, string>;
  peerDependencies?: Record<string, string>;
}

interface Manifest {
  /** What the program imports when it runs. */
  dependencies: Record<string, string>;
  devDependencies: Record<string, string>;
  /** Of the latter those that the product is built from; the others test it. */
  builtFrom: readonly string[];
}

export interface Supply {
  manifest: Manifest;
  packages: Record<string, LockedPackage>;
}

const REGISTRY = "https://registry.npmjs.org/";
const EXACT = /^\d+\.\d+\.\d+(?:-[\w.-]+)?(?:\+[\w.-]+)?$/;

/** Licences under which packages may be that the program needs when it runs or is built from; those of what goes into bundles stand in THIRD-PARTY-LICENSES. */
const SHIPPED = new Set(["MIT", "MIT-0", "ISC", "0BSD", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0", "BSL-1.0", "CC0-1.0", "OFL-1.1"]);
/** Licences that hold for one package each: libraries that stay files of their own, and office.js, which goes beside an add-in unmodified. */
const SHIPPED_ALONE: Readonly<Record<string, string>> = {
  "@odoo/o-spreadsheet": "LGPL-3.0-or-later",
  "@odoo/owl": "LGPL-3.0-only",
  "@microsoft/office-js": "LICENSE",
};
/** What is used here and never handed on may have these as well. */
const ONLY_HERE = ["BlueOak-1.0.0", "MPL-2.0", "Python-2.0", "CC-BY-4.0", "GPL-3.0-only"];
const USED_HERE = new Set([...SHIPPED, ...ONLY_HERE]);
/** Packages that bring an install script, and work where none has been run. */
const SCRIPTS = new Set(["esbuild"]);

export function readSupply(folder = root): Supply {
  const read = (file: string) => JSON.parse(readFileSync(join(folder, file), "utf8"));
  return { manifest: read("package.json") as Manifest, packages: (read("package-lock.json") as { packages: Supply["packages"] }).packages };
}

/** Where in the lock file these packages stand, and all that they need in turn. */
export function closure(names: readonly string[], packages: Supply["packages"]): Set<string> {
  const all = new Set<string>();
  const open = names.map((name) => ({ name, from: "" }));
  for (let next = open.pop(); next; next = open.pop()) {
    const path = found(next.name, next.from, packages);
    if (path === undefined || all.has(path)) continue;
    all.add(path);
    const { dependencies, optionalDependencies, peerDependencies } = packages[path]!;
    for (const name of Object.keys({ ...dependencies, ...optionalDependencies, ...peerDependencies })) open.push({ name, from: path });
  }
  return all;
}

/** Where a package finds another one: in a folder of its own, or in one further up. */
function found(name: string, from: string, packages: Supply["packages"]): string | undefined {
  for (let at = from; at; at = at.slice(0, Math.max(0, at.lastIndexOf("/node_modules/")))) {
    if (packages[`${at}/node_modules/${name}`]) return `${at}/node_modules/${name}`;
  }
  return packages[`node_modules/${name}`] && `node_modules/${name}`;
}

/** What is handed on to whoever uses the product, installed beside it or built into it. */
const shippedOf = ({ manifest, packages }: Supply): Set<string> => closure([...Object.keys(manifest.dependencies), ...manifest.builtFrom], packages);

/** What is not as it should be, as sentences. */
export function supplyFaults(supply: Supply): string[] {
  const { manifest, packages } = supply;
  const shipped = shippedOf(supply);
  const faults = manifest.builtFrom.filter((name) => !(name in manifest.devDependencies)).map((name) => `package.json: ${name} is built from and not listed`);
  for (const [name, version] of Object.entries({ ...manifest.dependencies, ...manifest.devDependencies })) {
    if (!EXACT.test(version)) faults.push(`package.json: ${name} ${version} is no exact version`);
    else if (packages[`node_modules/${name}`]?.version !== version) faults.push(`package-lock.json holds another version of ${name} than package.json`);
  }
  for (const [path, one] of Object.entries(packages)) if (path !== "") faults.push(...faultsOf(nameOf(path), one, !shipped.has(path)));
  return faults;
}

/** What is allowed above and no package needs. */
export function unusedAllowances(supply: Supply): string[] {
  const paths = shippedOf(supply);
  const all = Object.entries(supply.packages).map(([path, one]) => ({ path, name: nameOf(path), ...one }));
  const shipped = all.filter(({ path }) => paths.has(path));
  const has = (some: readonly LockedPackage[], licence: string) => some.some(({ license = "" }) => partsOf(license).includes(licence));
  return [
    ...[...SHIPPED].filter((licence) => !has(shipped, licence)).map((licence) => `nothing that is shipped is under ${licence}`),
    ...ONLY_HERE.filter((licence) => !has(all, licence)).map((licence) => `nothing is under ${licence}`),
    ...Object.entries(SHIPPED_ALONE)
      .filter(([name, licence]) => !shipped.some((one) => one.name === name && one.license === licence))
      .map(([name, licence]) => `no package ${name} is shipped under ${licence}`),
    ...[...SCRIPTS].filter((name) => !shipped.some((one) => one.name === name && one.hasInstallScript)).map((name) => `no package ${name} brings a script`),
  ];
}

const nameOf = (path: string): string => path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length);

function faultsOf(name: string, one: LockedPackage, isUsedHere: boolean): string[] {
  const faults: string[] = [];
  const need = (holds: boolean, what: string) => holds || faults.push(`package-lock.json: ${name} ${what}`);
  need(EXACT.test(one.version ?? ""), "has no exact version");
  need(/^sha512-/.test(one.integrity ?? ""), "has no checksum");
  need(!one.link && (one.resolved ?? REGISTRY).startsWith(REGISTRY), "does not come from the registry");
  need(SHIPPED_ALONE[name] === one.license || allows(one.license ?? "", isUsedHere ? USED_HERE : SHIPPED), `is under ${one.license ?? "no licence"}`);
  need(isUsedHere || !one.hasInstallScript || SCRIPTS.has(name), "runs a script when it is installed");
  return faults;
}

/** Every licence that an expression names. */
const partsOf = (licence: string): string[] => licence.replace(/^\((.*)\)$/, "$1").split(/ AND | OR /);

/** `A AND B` needs both, `A OR B` one of them. */
function allows(licence: string, list: ReadonlySet<string>): boolean {
  const all = licence.replace(/^\((.*)\)$/, "$1").split(" AND ");
  return all.every((part) => part.split(" OR ").some((one) => list.has(one)));
}
