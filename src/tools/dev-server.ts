import { readFileSync, realpathSync, statSync } from "node:fs";
import type { IncomingMessage, RequestListener, ServerResponse } from "node:http";
import { createServer, type Server } from "node:https";
import { extname, join, sep } from "node:path";
import { ToolRefusal } from "./manifest.ts";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".png": "image/png",
  ".xml": "application/xml; charset=utf-8",
};

/** A folder over https on this machine alone. */
export async function serveFolder(folder: string, port: number, certificate: { cert: Buffer; key: Buffer }): Promise<Server> {
  const server = createServer(certificate, folderListener(folder));
  await new Promise<void>((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      reject(error.code === "EADDRINUSE" ? new ToolRefusal(`Port ${port} is taken by another program: stop it, or choose another with --port.`) : error);
    });
    server.listen(port, "localhost", resolve);
  });
  return server;
}

/**
 * Reads the folder anew for every request, so that a build shows at the next load of the pane. Pictures
 * go without a word on caching: with one, Office shows an icon of its own in their place.
 */
export function folderListener(folder: string): RequestListener {
  return (request, response) => answer(folder, request, response);
}

function answer(folder: string, request: IncomingMessage, response: ServerResponse): void {
  const file = fileFor(folder, request.url ?? "/");
  if (request.method !== "GET" && request.method !== "HEAD") response.writeHead(405, { Allow: "GET, HEAD" }).end();
  else if (!file) response.writeHead(404).end();
  else {
    const type = TYPES[extname(file)] ?? "application/octet-stream";
    // Excel on the web, on an address of its own, asks for functions.json and the script itself.
    const headers = { "Content-Type": type, "Access-Control-Allow-Origin": "*", ...(type === "image/png" ? {} : { "Cache-Control": "no-store" }) };
    response.writeHead(200, headers).end(request.method === "HEAD" ? undefined : readFileSync(file));
  }
}

/** A file that is really in the folder: neither a path nor a link leads out of it. */
function fileFor(folder: string, url: string): string | undefined {
  try {
    const file = realpathSync(join(folder, decodeURIComponent(new URL(url, "https://localhost").pathname)));
    return file.startsWith(realpathSync(folder) + sep) && statSync(file).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}
