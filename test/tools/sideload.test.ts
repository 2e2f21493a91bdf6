import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { certificateFor, developmentPort, macFolder, steps } from "../../src/tools/sideload.ts";

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), "crosshatch-home-"));
});
afterEach(() => rmSync(home, { recursive: true }));

/** A certificate for localhost, made for this test, that runs out in 2126; its key was thrown away. */
const CERTIFICATE = `-----BEGIN CERTIFICATE-----
MIIBfzCCASWgAwIBAgIUP9jwmdfMwJKonVlDHhYRKtpaXVkwCgYIKoZIzj0EAwIw
FDESMBAGA1UEAwwJbG9jYWxob3N0MCAXDTI2MTEyNTEwMDk0N1oYDzIxMjYxMTAx
MTAwOTQ3WjAUMRIwEAYDVQQDDAlsb2NhbGhvc3QwWTATBgcqhkjOPQIBBggqhkjO
PQMBBwNCAAThEKCt/4a0Clfl8OqwhPqtt5FE/UERb1sQgbZJBBsFJc8FGq0XpVHy
vlXAgFZUilP68rcB2q1ZhjMZ4zSt+fmyo1MwUTAdBgNVHQ4EFgQUa4fyJRxo/WfY
HnpJwgZ8PDYRnhswHwYDVR0jBBgwFoAUa4fyJRxo/WfYHnpJwgZ8PDYRnhswDwYD
VR0TAQH/BAUwAwEB/zAKBggqhkjOPQQDAgNIADBFAiEAv5OPnCDezZ90IRp6P6C+
Z6qzd71UbNaTktISZuKpSYQCIA04sMnDI5n5o+De0pC548sl26BBqeuoXFg8BFoF
UQkd
-----END CERTIFICATE-----
`;

const noTool = () => {};
/** What the certificate tool leaves behind. */
function tool(): void {
  mkdirSync(join(home, ".office-addin-dev-certs"), { recursive: true });
  writeFileSync(join(home, ".office-addin-dev-certs", "localhost.crt"), CERTIFICATE);
  writeFileSync(join(home, ".office-addin-dev-certs", "localhost.key"), "key");
}
const none = () =>
  `There is no valid development certificate in ${join(home, ".office-addin-dev-certs")}. Run "npx office-addin-dev-certs@3 install" once with a connection, or give a certificate for localhost with --cert and --key.`;

test("an existing development certificate is used without asking the tool", () => {
  tool();
  const fetched = () => {
    throw new Error("the tool was asked");
  };
  const { cert, key } = certificateFor({}, home, fetched);
  expect([String(cert), String(key)]).toEqual([CERTIFICATE, "key"]);
});

test("without a certificate the tool is asked, and what it made is used", () => {
  expect(String(certificateFor({}, home, tool).cert)).toBe(CERTIFICATE);
});

test("a certificate that has run out is replaced by the tool", () => {
  tool();
  let asked = 0;
  const late = new Date("2130-01-01");
  expect(() => certificateFor({}, home, () => asked++, late)).toThrow(none());
  expect(asked).toBe(1);
});

test("when the tool cannot make one, the sentence says what to do", () => {
  expect(() => certificateFor({}, home, noTool)).toThrow(none());
});

test("a certificate of one's own needs its key, and both files", () => {
  expect(() => certificateFor({ cert: "a.pem" }, home, noTool)).toThrow("A certificate of your own needs both --cert and --key.");
  const missing = join(home, "none.pem");
  expect(() => certificateFor({ cert: missing, key: missing }, home, noTool)).toThrow(`There is no file ${missing} for --cert.`);
});

test("a port is a whole number from 1 to 65535", () => {
  expect([developmentPort("1"), developmentPort("3553"), developmentPort("65535")]).toEqual([1, 3553, 65535]);
  for (const text of ["0", "65536", "3553x", "-1", "3.5", "", "port"]) {
    expect(() => developmentPort(text)).toThrow(`"${text}" is not a port: give a whole number from 1 to 65535.`);
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
