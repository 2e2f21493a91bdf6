import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { networkInterfaces, tmpdir } from "node:os";
import { join } from "node:path";
import { type BenchServer, serve } from "../../src/cli/bench-server.ts";

/** What a client sends that keeps to no rule, byte for byte, and what comes back. */
let folder: string;
let server: BenchServer;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "bench-paths-"));
  mkdirSync(join(folder, "site"));
  mkdirSync(join(folder, "elsewhere"));
  writeFileSync(join(folder, "secret.txt"), "secret");
  writeFileSync(join(folder, "elsewhere", "secret.txt"), "secret");
  writeFileSync(join(folder, "site", "index.html"), "<p>bench</p>");
  symlinkSync(join(folder, "elsewhere"), join(folder, "site", "folder"), "junction");
  // Windows lets only some accounts link files.
  if (process.platform !== "win32") symlinkSync(join(folder, "secret.txt"), join(folder, "site", "link.txt"));
  server = await serve(join(folder, "site"), 0);
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

/** All that the server says until it closes the connection. */
function sent(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(server.port, "127.0.0.1", () => socket.write(text));
    let answer = "";
    socket.setEncoding("utf8");
    socket.on("data", (piece) => {
      answer += piece;
    });
    socket.on("error", reject);
    socket.on("close", () => resolve(answer));
  });
}

const get = (target: string, host = `127.0.0.1:${server.port}`) => sent(`GET ${target} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`);

test("the folder's own page is there, so that what follows is not refused for another reason", async () => {
  expect(await get("/")).toMatch(/^HTTP\/1\.1 200 [\s\S]*<p>bench<\/p>$/);
});

test.each([
  ["a link to a file elsewhere", "/link.txt"],
  ["a link to a folder elsewhere", "/folder/secret.txt"],
  ["a drive letter", "/C:/Windows/win.ini"],
  ["a drive letter with backslashes", "/c:%5CWindows%5Cwin.ini"],
  ["a share of another machine", "//elsewhere/share/secret.txt"],
  ["a share with backslashes", "/%5C%5Celsewhere%5Cshare%5Csecret.txt"],
  ["dots that are encoded twice", "/%252e%252e/secret.txt"],
  ["dots in more bytes than they need", "/%c0%ae%c0%ae/secret.txt"],
  ["dots behind a parameter", "/..;/secret.txt"],
  ["dots behind the question mark", "/?/../secret.txt/../../secret.txt".replace("?", "%3f")],
  ["a stream of a file", "/index.html::$DATA"],
  ["another spelling of the folder's page", "/INDEX.HTML"],
  ["a null at its end", "/index.html%00.txt"],
  ["a whole address elsewhere", "http://elsewhere.example/secret.txt"],
  ["the address of a file", "file:///etc/passwd"],
  ["a path without its stroke", "secret.txt"],
  ["a name that objects have of themselves", "/__proto__"],
])("%s is not found", async (_, target) => {
  const answer = await get(target);
  expect(answer).toMatch(/^HTTP\/1\.1 40[04] /);
  expect(answer).not.toMatch(/secret$|<p>|root:/);
});

test.each([
  ["a name that begins like its own", () => `127.0.0.1:${server.port}.elsewhere.example`],
  ["its own name behind another", () => `elsewhere.example@127.0.0.1:${server.port}`],
  ["a name with a dot at its end", () => `localhost.:${server.port}`],
  ["every address", () => `0.0.0.0:${server.port}`],
  ["no name", () => ""],
])("asked by %s, it refuses", async (_, host) => {
  expect(await get("/", host())).toMatch(/^HTTP\/1\.1 40[03] /);
});

test("without a line that names the host, and with two, nothing is served", async () => {
  expect(await sent("GET / HTTP/1.1\r\nConnection: close\r\n\r\n")).toMatch(/^HTTP\/1\.1 400 /);
  expect(await sent("GET / HTTP/1.0\r\n\r\n")).toMatch(/^HTTP\/1\.1 403 /);
  const own = `127.0.0.1:${server.port}`;
  expect(await sent(`GET / HTTP/1.1\r\nHost: elsewhere.example\r\nHost: ${own}\r\nConnection: close\r\n\r\n`)).toMatch(/^HTTP\/1\.1 40[03] /);
});

test("what is sent to it is not taken in, however much is announced", async () => {
  const answer = await sent(`POST / HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nContent-Length: 99999999999\r\nConnection: close\r\n\r\nbore`);
  expect(answer).toMatch(/^HTTP\/1\.1 405 [\s\S]*The bench is read, not written to\.\n$/);
});

test("headers without end are cut off", async () => {
  expect(await sent(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nx: ${"x".repeat(100_000)}`)).toMatch(/^HTTP\/1\.1 431 /);
});

test("from this machine's addresses in a network nothing answers", async () => {
  const outside = Object.values(networkInterfaces()).flatMap((all) => (all ?? []).filter(({ internal, family }) => !internal && family === "IPv4"));
  const reached = await Promise.all(
    outside.map(
      ({ address }) =>
        new Promise<boolean>((resolve) => {
          const socket = connect({ port: server.port, host: address, timeout: 3000 }, () => resolve(true));
          for (const end of ["error", "timeout"] as const) socket.on(end, () => resolve(false));
          socket.on("close", () => socket.destroy());
        }),
    ),
  );
  expect(reached.filter(Boolean)).toEqual([]);
});
