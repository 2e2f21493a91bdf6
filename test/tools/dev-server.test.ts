import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { createServer, type IncomingMessage, request, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { folderListener } from "../../src/tools/dev-server.ts";

let base: string;
let server: Server;
beforeAll(async () => {
  base = mkdtempSync(join(tmpdir(), "crosshatch-served-"));
  mkdirSync(join(base, "served", "icons"), { recursive: true });
  writeFileSync(join(base, "secret.txt"), "not served");
  writeFileSync(join(base, "served", "pane.html"), "<p>pane</p>");
  writeFileSync(join(base, "served", "functions.json"), "{}");
  writeFileSync(join(base, "served", "icons", "icon-16.png"), "png");
  symlinkSync(base, join(base, "served", "linked"), "junction");
  server = createServer(folderListener(join(base, "served")));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
});
afterAll(() => {
  server.close();
  server.closeAllConnections();
  rmSync(base, { recursive: true });
});

const options = (path: string, method: string) => ({ port: (server.address() as AddressInfo).port, host: "127.0.0.1", path, method });

function ask(path: string, method = "GET"): Promise<{ status?: number; headers: IncomingMessage["headers"]; text: string }> {
  return new Promise((resolve, reject) => {
    const asked = request(options(path, method), (answer) => {
      let text = "";
      answer.on("data", (part) => {
        text += part;
      });
      answer.on("end", () => resolve({ status: answer.statusCode, headers: answer.headers, text }));
    });
    asked.on("error", reject).end();
  });
}

test("a file is served with its type, and never from a store", async () => {
  const { status, headers, text } = await ask("/pane.html?_host_Info=Excel");
  expect([status, text, headers["content-type"], headers["cache-control"]]).toEqual([200, "<p>pane</p>", "text/html; charset=utf-8", "no-store"]);
});

test("Excel on the web may read the description of the functions from its own address", async () => {
  expect((await ask("/functions.json")).headers["access-control-allow-origin"]).toBe("*");
});

test("pictures say nothing about caching, or Office would show its own", async () => {
  const { headers } = await ask("/icons/icon-16.png");
  expect([headers["content-type"], headers["cache-control"]]).toEqual(["image/png", undefined]);
});

test.each(["/../secret.txt", "/..%2Fsecret.txt", "/%2e%2e/secret.txt", "/..\\secret.txt", "/linked/secret.txt", "/icons", "/", "/none.js", "/%E0%A4%A"])(
  "%s leads to no file",
  async (path) => {
    expect((await ask(path)).status).toBe(404);
  },
);

test("a change of the folder shows at once", async () => {
  writeFileSync(join(base, "served", "pane.html"), "<p>new</p>");
  expect((await ask("/pane.html")).text).toBe("<p>new</p>");
});

test("nothing is written to it", async () => {
  const { status, headers } = await ask("/pane.html", "PUT");
  expect([status, headers.allow]).toEqual([405, "GET, HEAD"]);
  expect((await ask("/pane.html", "HEAD")).text).toBe("");
});
