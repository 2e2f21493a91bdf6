import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { programs } from "./office.ts";

/** Calc without a window, and the Python that talks to it; the development kit for the program that makes type libraries. */
const PACKAGES = ["libreoffice-calc-nogui", "python3-uno", "libreoffice-dev"];
/** Somebody else may be installing: apt waits for so many seconds. */
const WAIT = ["-o", "DPkg::Lock::Timeout=300"];

export type Installed = { isThere: true } | { isThere: false; why: string; mustBe: boolean };

/** Whether LibreOffice is there; installed by apt first, where this runs as root on Debian or its like. */
export function installed(): Installed {
  const found = programs();
  if (typeof found !== "string") return { isThere: true };
  const mayInstall = process.getuid?.() === 0 && existsSync("/etc/debian_version");
  if (!mayInstall) return { isThere: false, why: found, mustBe: false };
  console.log(`\n${found}: installing ${PACKAGES.join(", ")} …`);
  const apt = (...args: string[]) =>
    spawnSync("apt-get", [...WAIT, ...args], { stdio: ["ignore", "ignore", "inherit"], env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } });
  apt("update");
  apt("install", "-y", "--no-install-recommends", ...PACKAGES);
  const now = programs();
  return typeof now === "string" ? { isThere: false, why: now, mustBe: true } : { isThere: true };
}
