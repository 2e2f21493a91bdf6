import type { Browser } from "playwright-core";
import { launchOneOf, PRESENT_WAYS } from "./browser.ts";

export const PAPERS = ["A4", "Letter"] as const;
export type Paper = (typeof PAPERS)[number];

/** The page as a tagged PDF, by a browser that is on this machine, or why not. The page's own scripts, had it any, would not run. */
export async function pdfOf(page: string, format: Paper): Promise<{ bytes: Uint8Array } | { why: string }> {
  let browser: Browser | undefined;
  try {
    browser = await launchOneOf(PRESENT_WAYS);
    const sheet = await browser.newPage({ javaScriptEnabled: false, offline: true });
    await sheet.setContent(page, { waitUntil: "load" });
    return { bytes: await sheet.pdf({ format, printBackground: true, tagged: true, outline: true }) };
  } catch (error) {
    return { why: reasonOf(error) };
  } finally {
    await browser?.close();
  }
}

function reasonOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  if (code === "ERR_MODULE_NOT_FOUND" || code === "MODULE_NOT_FOUND") return "the package playwright-core, which steers a browser, is not installed";
  return message.split("\n", 1)[0]!.replace(/\.$/, "");
}
