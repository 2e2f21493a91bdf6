import { readdirSync, readFileSync } from "node:fs";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, relative, sep } from "node:path";

/** The port of the bench unless told otherwise. */
export const PORT = 7304;

const LOOPBACK = "127.0.0.1";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".xml": "application/xml; charset=utf-8",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  ".txt": "text/plain; charset=utf-8",
};

/** What every page of the bench may do: nothing but show what came from this server. */
const STRICT = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; base-uri 'none'; form-action 'none'";

/**
 * The pane runs under the strict policy. The spreadsheet engine compiles formulas and templates with
 * `new Function`, sets style attributes, and reads a picture from its address when it prints, so its page
 * alone is allowed all three.
 */
const POLICIES: Readonly<Record<string, string>> = {
  "/index.html": `${STRICT.replace("script-src 'self'", "script-src 'self' 'unsafe-eval'").replace("style-src 'self'", "style-src 'self' 'unsafe-inline'")}; connect-src 'self' data:; frame-src 'self'; frame-ancestors 'none'`,
  "/pane.html": `${STRICT}; frame-ancestors 'self'`,
};
const POLICY = `${STRICT}; frame-ancestors 'none'`;

interface Served {
  bytes: Buffer;
  headers: Record<string, string | number>;
}

/** Why the bench cannot be served, as a whole sentence for people. */
export class ServerRefusal extends Error {}

export interface BenchServer {
  url: string;
  port: number;
  close(): Promise<void>;
}

/**
 * Serves a folder to this machine alone, and one workbook to be opened in it. The files are read once, before the first request: what is
 * asked for is looked up in that list, so no address leads out of the folder, and a build going on
 * beside it changes nothing.
 */
export async function serve(folder: string, port = PORT, given?: { name: string; bytes: Buffer }): Promise<BenchServer> {
  const files = filesIn(folder);
  if (given) files.set(`/file/${given.name}`, { bytes: given.bytes, headers: headersOf("/file.xlsx", given.bytes.length) });
  const server = createServer((request, response) => answer(files, request, response));
  const taken = await listening(server, port);
  return { url: `http://${LOOPBACK}:${taken}/${given ? `?file=${encodeURIComponent(given.name)}` : ""}`, port: taken, close: () => closing(server) };
}

function filesIn(folder: string): Map<string, Served> {
  const files = new Map<string, Served>();
  for (const file of filesUnder(folder)) {
    const path = `/${relative(folder, file).split(sep).join("/")}`;
    const bytes = readFileSync(file);
    files.set(path, { bytes, headers: headersOf(path, bytes.length) });
  }
  return files;
}

/** A link may lead elsewhere, so it is neither a file nor a folder of this one. */
function* filesUnder(folder: string): Generator<string> {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* filesUnder(path);
    else if (entry.isFile()) yield path;
  }
}

const headersOf = (path: string, length: number): Served["headers"] => ({
  "Content-Type": TYPES[extname(path)] ?? "application/octet-stream",
  "Content-Length": length,
  "Content-Security-Policy": POLICIES[path] ?? POLICY,
  ...COMMON,
});

/** Nothing is stored, so that a new version shows at the next load; and no other page gets at it. */
const COMMON = {
  "Cache-Control": "no-store",
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
};

function answer(files: ReadonlyMap<string, Served>, request: IncomingMessage, response: ServerResponse): void {
  const path = pathOf(request.url ?? "/");
  const file = path === undefined ? undefined : files.get(path === "/" ? "/index.html" : path);
  if (!isOurs(request)) {
    say(response, 403, "This bench answers to its own address alone.");
  } else if (request.method !== "GET" && request.method !== "HEAD") {
    say(response, 405, "The bench is read, not written to.", { Allow: "GET, HEAD" });
  } else if (!file) {
    say(response, 404, "There is no such file on the bench.");
  } else {
    response.writeHead(200, file.headers);
    // Node leaves the bytes out of the answer to HEAD.
    response.end(file.bytes);
  }
}

/** A page elsewhere can make its own name mean this machine; the name it then asks for gives it away. */
function isOurs(request: IncomingMessage): boolean {
  const { port } = request.socket.address() as AddressInfo;
  const names = [LOOPBACK, "localhost"];
  const host = request.headers.host?.toLowerCase();
  return names.some((name) => host === `${name}:${port}` || (port === 80 && host === name));
}

function pathOf(url: string): string | undefined {
  try {
    return decodeURIComponent(url.split("?", 1)[0]!);
  } catch {
    return undefined;
  }
}

function say(response: ServerResponse, status: number, sentence: string, headers: Record<string, string> = {}): void {
  const bytes = Buffer.from(`${sentence}\n`);
  response.writeHead(status, { ...headersOf(".txt", bytes.length), "Content-Type": TYPES[".txt"]!, ...headers });
  response.end(bytes);
}

function listening(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => reject(refusalOf(error, port)));
    server.listen(port, LOOPBACK, () => resolve((server.address() as AddressInfo).port));
  });
}

function refusalOf(error: NodeJS.ErrnoException, port: number): Error {
  if (error.code === "EADDRINUSE") {
    return new ServerRefusal(`Port ${port} is taken by another program: stop it, or choose another port with --port (--port 0 takes any free one).`);
  }
  if (error.code === "EACCES") return new ServerRefusal(`Port ${port} may not be used by this account: choose one above 1023 with --port.`);
  return error;
}

function closing(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    // Browsers hold connections open that carry nothing.
    server.closeAllConnections();
  });
}
