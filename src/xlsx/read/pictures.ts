import { FILE_LIMITS, UnreadableFile } from "../file-limits.ts";
import { attributesOf, type Handlers, readXml } from "../xml.ts";
import { type Unpack, Zip } from "../zip.ts";
import { readWorkbookPart, relationsOf, workbookPath } from "./parts.ts";

/** Of a picture: its corner, and by which relation its file is found. */
interface Anchor {
  row: number;
  column: number;
  file: string;
}

/** The file of the picture that stands first on a sheet of an .xlsx, in Base64; `null` where there is none, or none that can be read (ECMA-376 part 1, 20.5). */
export function firstPictureOf(bytes: Uint8Array, sheet: string, unpack?: Unpack): string | null {
  try {
    return pictureIn(bytes, sheet, unpack);
  } catch (reason) {
    // A workbook is not refused for a drawing on it.
    if (reason instanceof UnreadableFile) return null;
    throw reason;
  }
}

function pictureIn(bytes: Uint8Array, sheet: string, unpack?: Unpack): string | null {
  const zip = new Zip(bytes, FILE_LIMITS, unpack);
  const related = (part: string) => relationsOf(zip, part, FILE_LIMITS);
  const workbook = workbookPath(zip, FILE_LIMITS);
  const relation = readWorkbookPart(zip.read(workbook)!, workbook, FILE_LIMITS).sheets.find(({ name }) => name === sheet)?.relation;
  const page = related(workbook).find(({ id }) => id === relation)?.target;
  const drawing = page && related(page).find(({ kind }) => kind === "drawing")?.target;
  const xml = drawing && zip.read(drawing);
  if (!xml) return null;
  const [first] = anchorsIn(xml, drawing).sort((a, b) => a.row - b.row || a.column - b.column);
  const file = related(drawing).find(({ id }) => id === first?.file)?.target;
  const picture = file && zip.read(file);
  return picture ? base64Of(picture) : null;
}

/** Pictures by their anchors; one that is placed by no cell stands first. */
function anchorsIn(xml: Uint8Array, part: string): Anchor[] {
  const anchors: Anchor[] = [];
  const corner = { row: 0, col: 0 };
  let isCorner = false;
  let text = "";
  const handlers: Handlers = {
    open(name, attributes) {
      text = "";
      if (name.endsWith("Anchor")) Object.assign(corner, { row: 0, col: 0 });
      else if (name === "from") isCorner = true;
      else if (name === "blip" && attributes["r:embed"] !== undefined) anchors.push({ row: corner.row, column: corner.col, file: attributes["r:embed"] });
    },
    text(piece) {
      text += piece;
    },
    close(name) {
      if (name === "from") isCorner = false;
      else if (isCorner && (name === "row" || name === "col")) corner[name as "row" | "col"] = Number(text);
    },
  };
  // Drawings have namespaces of their own.
  readXml(xml, part, FILE_LIMITS.depth, handlers, { isOwn: () => true, attributesOf });
  return anchors;
}

/** As many bytes as a call takes for arguments. */
const PIECE = 0x8000;

export function base64Of(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += PIECE) text += String.fromCharCode(...bytes.subarray(at, at + PIECE));
  return btoa(text);
}
