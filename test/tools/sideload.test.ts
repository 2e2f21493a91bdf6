import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { certificateFor, macFolder, portFrom, steps } from "../../src/tools/sideload.ts";

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), "crosshatch-home-"));
});
afterEach(() => rmSync(home, { recursive: true }));

const noTool = () => {};
/** What the certificate tool leaves behind. */
function tool(): void {
  mkdirSync(join(home, ".office-addin-dev-certs"));
  for (const name of ["localhost.crt", "localhost.key"]) writeFileSync(join(home, ".office-addin-dev-certs", name), name);
}

test("an existing development certificate is used without asking the tool", () => {
  tool();
  const fetched = () => {
    throw new Error("the tool was asked");
  };
  const { cert, key } = certificateFor({ port: 3553 }, home, fetched);
  expect([String(cert), String(key)]).toEqual(["localhost.crt", "localhost.key"]);
});

test("without a certificate the tool is asked once, and what it made is used", () => {
  expect(String(certificateFor({ port: 3553 }, home, tool).cert)).toBe("localhost.crt");
});

test("when the tool cannot make one, the sentence says what to do", () => {
  expect(() => certificateFor({ port: 3553 }, home, noTool)).toThrow(
    `There is no development certificate in ${join(home, ".office-addin-dev-certs")}. Run "npx office-addin-dev-certs@2 install" once with a connection, or give a certificate for localhost with --cert and --key.`,
  );
});

test("a certificate of one's own needs its key, and both files", () => {
  expect(() => certificateFor({ port: 3553, cert: "a.pem" }, home, noTool)).toThrow("A certificate of your own needs both --cert and --key.");
  const missing = join(home, "none.pem");
  expect(() => certificateFor({ port: 3553, cert: missing, key: missing }, home, noTool)).toThrow(`There is no file ${missing} for --cert.`);
});

test("a port is a whole number from 1 to 65535", () => {
  expect([portFrom("1"), portFrom("3553"), portFrom("65535")]).toEqual([1, 3553, 65535]);
  for (const text of ["0", "65536", "3553x", "-1", "3.5", "", "port"]) {
    expect(() => portFrom(text)).toThrow(`"${text}" is not a port: give a whole number from 1 to 65535.`);
  }
});

test("each system is told its own way into Excel, and the web's goes everywhere", () => {
  const manifest = join("work", "crosshatch.xml");
  expect(steps("win32", manifest).join("\n")).toMatch(/Trusted Add-in Catalogs[\s\S]*Shared Folder[\s\S]*Upload My Add-in/);
  expect(steps("darwin", manifest).join("\n")).toMatch(/Developer Add-ins[\s\S]*Upload My Add-in/);
  expect(steps("linux", manifest)).toEqual([expect.stringMatching(/^Excel on the web: .*crosshatch\.xml$/)]);
});

test("Excel on the Mac looks into its own container", () => {
  expect(macFolder("/Users/yard")).toBe(join("/Users/yard", "Library", "Containers", "com.microsoft.Excel", "Data", "Documents", "wef"));
});
