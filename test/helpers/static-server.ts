import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".json": "application/json",
};

export interface StaticServer {
  /** `http://127.0.0.1:port`, without a slash at its end. */
  address: string;
  close(): Promise<void>;
}

/** Serves the files of one folder to this machine, on a port that is free. */
export async function serve(folder: string): Promise<StaticServer> {
  const server = createServer(async (request, response) => {
    // normalize() of a path from "/" cannot climb above the folder.
    const path = normalize(decodeURIComponent(new URL(request.url ?? "/", "http://localhost").pathname));
    try {
      const body = await readFile(join(folder, path));
      response.writeHead(200, { "Content-Type": TYPES[extname(path)] ?? "application/octet-stream" }).end(body);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
