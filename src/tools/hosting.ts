/**
 * What web servers must be told of the add-in's files, for those that shops have: Apache (`.htaccess`), IIS
 * (`web.config`), nginx, and hosts of static files that read a `_headers`.
 *
 * - Excel on the web fetches functions.json and functions.js from an address of its own, which the
 *   browser allows only with `Access-Control-Allow-Origin`.
 * - What stands in a folder of its version never changes and may be kept; what Excel knows by a fixed
 *   name is asked for anew each time, so that an update arrives.
 * - The pane stands in a frame: `X-Frame-Options` would keep it out.
 * - Pictures go without a word on caching: with one, Office shows an icon of its own in their place.
 */

const ANY_ORIGIN = "*";
const FOREVER = "public, max-age=31536000, immutable";
const ANEW = "no-cache";
/** Files that keep their names from version to version. */
export const FIXED = ["pane.html", "functions.json", "functions.js", "manifest.xml", "support.html"];

/** The settings by file name, for files under the path of `address` whose versions lie in `versioned`. */
export function hostingFiles(address: string, versioned: string): Record<string, string> {
  const { pathname } = new URL(address);
  return { ".htaccess": APACHE, "web.config": iis(versioned), "nginx.conf": nginx(pathname), _headers: headersFile(pathname, versioned) };
}

const APACHE = `# For Apache 2.4 with mod_headers, where AllowOverride lets this file count (FileInfo, or All).
AddType application/json .json
AddType text/javascript .js
<IfModule mod_headers.c>
  Header always set Access-Control-Allow-Origin "${ANY_ORIGIN}"
  Header always unset X-Frame-Options
  <If "%{REQUEST_URI} =~ m#/v[0-9][^/]*/[^/]+$#">
    Header set Cache-Control "${FOREVER}"
  </If>
  <ElseIf "%{REQUEST_URI} =~ m#\\.(?:html|js|json|xml)$#">
    Header set Cache-Control "${ANEW}"
  </ElseIf>
</IfModule>
`;

const header = (name: string, value: string): string => `<remove name="${name}" /><add name="${name}" value="${value}" />`;
const inHeaders = (inside: string): string => `<system.webServer><httpProtocol><customHeaders>${inside}</customHeaders></httpProtocol></system.webServer>`;

const iis = (versioned: string): string => `<?xml version="1.0" encoding="UTF-8"?>
<configuration>
  <system.webServer>
    <httpProtocol>
      <customHeaders>
        ${header("Access-Control-Allow-Origin", ANY_ORIGIN)}
        <remove name="X-Frame-Options" />
      </customHeaders>
    </httpProtocol>
    <staticContent>
      <remove fileExtension=".json" /><mimeMap fileExtension=".json" mimeType="application/json" />
    </staticContent>
  </system.webServer>
${FIXED.map((file) => `  <location path="${file}">${inHeaders(header("Cache-Control", ANEW))}</location>`).join("\n")}
  <location path="${versioned}">${inHeaders(header("Cache-Control", FOREVER))}</location>
</configuration>
`;

const nginx = (path: string): string => `# To be included in the server's block: include /…/nginx.conf;
# A place with add_header of its own takes over none from outside, so each says all.
location ^~ ${path} {
  types { text/html html; text/javascript js; text/css css; application/json json; application/xml xml; image/png png; }
  add_header Access-Control-Allow-Origin "${ANY_ORIGIN}" always;
  location ~ /v[0-9][^/]*/[^/]+$ {
    add_header Access-Control-Allow-Origin "${ANY_ORIGIN}" always;
    add_header Cache-Control "${FOREVER}";
  }
  location ~ \\.(html|js|json|xml)$ {
    add_header Access-Control-Allow-Origin "${ANY_ORIGIN}" always;
    add_header Cache-Control "${ANEW}" always;
  }
}
`;

/** Rules that match one file are put together by these hosts, so no file has two of one name. */
const headersFile = (path: string, versioned: string): string => `# Belongs at the top of the site, ${path === "/" ? "where it lies" : `not in ${path}`}.
${path}*
  Access-Control-Allow-Origin: ${ANY_ORIGIN}
${FIXED.map((file) => `${path}${file}\n  Cache-Control: ${ANEW}`).join("\n")}
${path}${versioned}/*
  Cache-Control: ${FOREVER}
`;
