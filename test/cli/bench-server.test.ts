import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BenchServer, ServerRefusal, serve } from "../../src/cli/bench-server.ts";

let folder: string;
let server: BenchServer;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "bench-"));
  mkdirSync(join(folder, "site", "samples"), { recursive: true });
  writeFileSync(join(folder, "secret.txt"), "secret");
  writeFileSync(join(folder, "site", "index.html"), "<p>bench</p>");
  writeFileSync(join(folder, "site", "pane.html"), "<p>pane</p>");
  writeFileSync(join(folder, "site", "samples", "build sheet.xlsx"), "PK");
  server = await serve(join(folder, "site"), 0);
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

interface Answer {
  status: number;
  headers: Record<string, string | string[] | undefined>;
  body: string;
}

/** As a client may send it: fetch would tidy the path and the name up. */
function ask(path: string, options: { method?: string; host?: string } = {}): Promise<Answer> {
  const { method = "GET", host = `127.0.0.1:${server.port}` } = options;
  return new Promise((resolve, reject) => {
    const asked = request({ host: "127.0.0.1", port: server.port, path, method, headers: { host } }, (response) => {
      let body = "";
      response.on("data", (piece) => {
        body += piece;
      });
      response.on("end", () => resolve({ status: response.statusCode!, headers: response.headers, body }));
    });
    asked.on("error", reject);
    asked.end();
  });
}

const policy = async (path: string) => String((await ask(path)).headers["content-security-policy"]);

test("a file of the folder is served with its type, and nothing is stored by the browser", async () => {
  const { status, headers, body } = await ask("/");
  expect([status, body, headers["content-type"]]).toEqual([200, "<p>bench</p>", "text/html; charset=utf-8"]);
  expect(headers["cache-control"]).toBe("no-store");
  expect(headers["x-content-type-options"]).toBe("nosniff");
});

test("a name with a space is found by its address", async () => {
  const { status, headers } = await ask("/samples/build%20sheet.xlsx?again");
  expect([status, headers["content-type"]]).toEqual([200, "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"]);
});

test("HEAD gives the headers alone", async () => {
  const { status, headers, body } = await ask("/", { method: "HEAD" });
  expect([status, headers["content-length"], body]).toEqual([200, "12", ""]);
});

test.each([
  "/../secret.txt",
  "/..%2fsecret.txt",
  "/%2e%2e/secret.txt",
  "/samples/../../secret.txt",
  "/..\\secret.txt",
  "/..%5csecret.txt",
  "//etc/passwd",
  "/%",
  "/%00",
  "/samples",
  "/nothing.html",
])("%s is not found", async (path) => {
  const { status, body } = await ask(path);
  expect([status, body]).toEqual([404, "There is no such file on the bench.\n"]);
});

test.each(["POST", "PUT", "DELETE", "OPTIONS"])("%s is refused", async (method) => {
  const { status, headers } = await ask("/", { method });
  expect([status, headers.allow]).toEqual([405, "GET, HEAD"]);
});

test("another name for this machine is refused, as a page elsewhere would use it", async () => {
  for (const host of ["evil.example", `evil.example:${server.port}`, "127.0.0.1", `127.0.0.1:${server.port + 1}`]) {
    const { status, body } = await ask("/", { host });
    expect([host, status, body]).toEqual([host, 403, "This bench answers to its own address alone.\n"]);
  }
  expect((await ask("/", { host: `localhost:${server.port}` })).status).toBe(200);
});

test("the pane's page may not evaluate text as code, the bench's page may; neither may reach another server", async () => {
  expect(await policy("/")).toContain("script-src 'self' 'unsafe-eval'");
  expect(await policy("/pane.html")).toContain("script-src 'self';");
  expect(await policy("/pane.html")).toContain("style-src 'self';");
  for (const path of ["/", "/pane.html", "/nothing"]) expect(await policy(path)).toMatch(/^default-src 'none';/);
});

test("it listens to this machine alone", () => {
  expect(server.url).toBe(`http://127.0.0.1:${server.port}/`);
});

test("a port that is taken is refused in a sentence that names it and says what to do", async () => {
  const second = serve(join(folder, "site"), server.port);
  await expect(second).rejects.toThrow(ServerRefusal);
  await expect(second).rejects.toThrow(
    `Port ${server.port} is taken by another program: stop it, or choose another port with --port (--port 0 takes any free one).`,
  );
});

test("closing frees the port at once, also with a connection held open", async () => {
  const other = await serve(join(folder, "site"), 0);
  await fetch(other.url, { keepalive: true });
  await other.close();
  const again = await serve(join(folder, "site"), other.port);
  await again.close();
});
