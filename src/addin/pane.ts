/** The pane's page in Excel: waits for office.js, then shows the pane over the workbook that is open. */

import { excelHost } from "../hosts/excel/host.ts";
import { mountPane } from "../pane/mount.tsx";
import { themeFor } from "./theme.ts";

const root = document.getElementById("pane")!;

const OUTSIDE =
  "This page is Crosshatch's pane for Excel: open it there with the button on the Home tab. Without Excel, the bench shows the same pane beside a sheet of its own.";
const NO_OFFICE =
  "The pane could not load office.js, which it needs to reach the workbook. Check the connection to the address it is served from, then open the pane again.";

const NOT_READY =
  "Excel has not answered for ten seconds. Close the pane and open it again; if that does not help, close Excel. Where it stays so, a network that blocks appsforoffice.microsoft.com may be the reason, or an Excel that is too old (see README, In Excel).";
const PATIENCE = 10_000;

const TOO_OLD =
  "This Excel does not run the functions of add-ins, so that their cells would stay at #NAME?. Crosshatch needs Excel for Microsoft 365 or Excel 2024 on Windows, Excel for Mac 16.52, or Excel on the web. Without them the bench and the command line work on the same sheets.";
/** As the manifest asks for; an Excel that installs the add-in all the same gets a sentence. */
const NEEDED = [
  ["SharedRuntime", "1.2"],
  ["CustomFunctionsRuntime", "1.3"],
  ["ExcelApi", "1.12"],
] as const;

function say(sentence: string): void {
  const line = document.createElement("p");
  line.textContent = sentence;
  line.className = "outside";
  root.replaceChildren(line);
}

async function start(): Promise<void> {
  if (typeof Office === "undefined") return say(NO_OFFICE);
  const impatience = setTimeout(() => say(NOT_READY), PATIENCE);
  const { host } = await Office.onReady();
  clearTimeout(impatience);
  root.replaceChildren();
  if (host !== Office.HostType.Excel) return say(OUTSIDE);
  if (!NEEDED.every(([set, version]) => Office.context.requirements.isSetSupported(set, version))) return say(TOO_OLD);
  mountPane(root, excelHost(), { theme: themeFor(Office.context.officeTheme?.bodyBackgroundColor) });
}

void start();
