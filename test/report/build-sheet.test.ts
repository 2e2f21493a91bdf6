import { pdfOf } from "../../src/cli/report.ts";
import { openWorkbook } from "../../src/hosts/file.ts";
import type { ReportInput, ShopHead } from "../../src/report/content.ts";
import { reportInput, withPicture } from "../../src/report/gather/workbook.ts";
import { pictureAddress } from "../../src/report/picture.ts";
import { renderReport } from "../../src/report/report.ts";
import { workbook } from "../check/workbook.ts";
import { DOT } from "../hosts/contract-sheets.ts";
import { richBook } from "../xlsx/patch/rich-book.ts";
import { filledEngine, filledInput, SHORT_BLOCK } from "./filled-engine.ts";
import { DATE, fullInput, textOf } from "./page.ts";

const sheetOf = (input: ReportInput, withDetails = false): string => renderReport([input], { date: DATE, withDetails });

// Taper is 73.025 − 73.015 at cylinder 1; the sheet keeps 73.020 as 73.02, and its like beside it have three decimals.
test("every reading and every judged result stands by cylinder, with its limits once and its verdict beside it", async () => {
  const text = textOf(sheetOf(await filledInput(await filledEngine({}, SHORT_BLOCK))));
  expect(text).toContain(
    "Bores What Cylinder 1 Cylinder 2 Cylinder 3 Cylinder 4 Limits Top thrust 73.025 73.035 73.045 73.055 Top pin 73.020 73.025 73.030 73.035 Middle thrust 73.02 73.03 73.04 73.05",
  );
  expect(text).toContain("Taper 0.010 within 0.015 within 0.020 within 0.025 over at most 0.020");
  expect(text).toContain("End float 0.12 within 0.08 to 0.20");
  expect(text).toContain("Mass tolerance 2 g");
  expect(text).toContain("Gasket thickness 1.2 mm");
  expect(text).toContain("Source of the limits: service manual, section 4.");
  expect(text).toContain("Torques Fastener Tightened to Done by Cylinder head 65 the yard");
  expect(text).toContain("Parts list Part Part number Quantity Piston rings HB-204 4");
  expect(text).toContain("Remarks Cylinder 2, the owner Light score below the top ring; left, as agreed.");
  // What explains an entry is no remark.
  expect(text).not.toContain("of every length in this workbook");
}, 60_000);

test("cylinders that no page is wide enough for stand in as many tables as it takes", async () => {
  const page = sheetOf(await filledInput(await filledEngine({ cylinders: 16 }, ["BoreReadings"])));
  const bores = /<h3>Bores<\/h3>([\s\S]*?)<h[23]>/.exec(page)![1]!;
  const across = [...bores.matchAll(/<thead>([\s\S]*?)<\/thead>/g)].map(([, head]) =>
    [...head!.matchAll(/Cylinder.(\d+)/g)].map(([, number]) => Number(number)),
  );
  expect(across).toEqual([
    [1, 2, 3, 4, 5, 6],
    [7, 8, 9, 10, 11, 12],
    [13, 14, 15, 16],
  ]);
}, 60_000);

test("findings and method are behind it only where they are asked for", () => {
  const [without, withThem] = [textOf(sheetOf(fullInput())), textOf(sheetOf(fullInput(), true))];
  for (const part of ["Behind these figures", "Findings, worst first", "How verdicts are reached", "Limits and their source", "BG-1"]) {
    expect(without).not.toContain(part);
    expect(withThem).toContain(part);
  }
  for (const text of [without, withThem]) {
    expect(text).toContain("Measured by Checked by Date");
    expect(text).toContain("Leak-down test.");
  }
});

const withShop = (shop: Partial<ShopHead>): ReportInput => {
  const input = fullInput();
  return { ...input, content: { ...input.content, shop: { sheet: "Shop", name: "", lines: [], ...shop } } };
};

describe("the head of the paper", () => {
  test("the shop's entries come from its sheet; a blank one leaves no trace", async () => {
    const made = await filledEngine({}, []);
    expect((await filledInput(made)).content.shop).toEqual({ sheet: "Shop", name: "", lines: [] });
    for (const [item, entry] of [
      ["Shop name", "Yard at the lock <&>"],
      ["Town", "Lockside"],
      ["Telephone", "555 0100"],
    ] as const)
      await made.type("ShopHead", "Entry", made.rowOf("ShopHead", item), entry);
    const input = await filledInput(made);
    expect(input.content.shop).toEqual({ sheet: "Shop", name: "Yard at the lock <&>", lines: ["Lockside", "Telephone 555 0100"] });
    expect(input.content.identity.map(({ name }) => name)).not.toContain("Shop name");
    expect((await filledInput(await filledEngine({ without: ["shop"] }, []))).content.shop).toBeUndefined();
  }, 60_000);

  test("its mark is a picture that lies in the page", () => {
    const page = sheetOf(withShop({ name: "Yard <b>", picture: DOT.png }));
    expect(page).toContain(`<img src="data:image/png;base64,${DOT.png}" alt="Mark of Yard &lt;b&gt;">`);
    expect(page).toContain("img-src data:");
  });

  // JPEG begins with FF D8 FF (ISO/IEC 10918-1, B.1.1.3).
  test.each([
    ["an SVG", btoa('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>')],
    ["HTML", btoa("<!doctype html><script>alert(1)</script>")],
    ["a GIF", btoa("GIF89a")],
    ["text that is no Base64", 'x" onerror="alert(1)'],
    ["nothing", ""],
    ["a picture too large for a page", `iVBORw0KGgo${"A".repeat(2_000_001)}`],
  ])("%s is no picture, whatever the workbook calls it", (_, picture) => {
    expect(pictureAddress(picture)).toBeUndefined();
    expect(sheetOf(withShop({ name: "Yard", picture }))).not.toContain("<img");
  });

  test("a JPEG is one", () => {
    expect(pictureAddress(btoa("\xff\xd8\xff\xe0\x00\x10JFIF\x00\x01\x01"))).toMatch(/^data:image\/jpeg;base64,/);
  });

  test("the picture is the first one on the shop's sheet, as its file holds it", async () => {
    const host = await openWorkbook(richBook(), "rich.xlsx");
    const shop = { sheet: "Bores", name: "", lines: [] };
    const { content } = withShop(shop);
    const { content: pictured, notes } = await withPicture(content, host);
    expect(notes).toEqual([]);
    expect(pictureAddress(pictured.shop?.picture)).toMatch(/^data:image\/png;base64,iVBORw0KGgo/);
    expect((await withPicture({ ...content, shop: { ...shop, sheet: "Parts" } }, host)).content.shop?.picture).toBeUndefined();
  });

  test.each([
    [btoa("GIF89a"), "the picture on the sheet Shop is neither a PNG nor a JPEG, so the paper goes without it"],
    [`iVBORw0KGgo${"A".repeat(2_000_001)}`, "the picture on the sheet Shop is larger than 1.5 MB, so the paper goes without it"],
  ])("a picture that cannot stand there is told as such", async (picture, note) => {
    const { notes } = await withPicture(withShop({ name: "Yard" }).content, { firstPicture: async () => picture });
    expect(notes).toEqual([note]);
  });
});

// Printed by a browser. A4 and letter: the most that a customer is handed for the usual work on four cylinders; with all that a new build sheet asks for it is more.
test.each([
  ["A4", SHORT_BLOCK, 3],
  ["Letter", SHORT_BLOCK, 3],
  ["A4", undefined, 4],
] as const)(
  "on %s a four-cylinder engine takes no more pages than that",
  async (paper, tables, most) => {
    const input = await filledInput(await filledEngine({}, tables));
    const pdf = await pdfOf(
      sheetOf({ ...input, content: { ...input.content, shop: { sheet: "Shop", name: "Yard", lines: ["At the lock", "Lockside"], picture: DOT.png } } }),
      paper,
    );
    if ("why" in pdf) throw new Error(pdf.why);
    const pages = [
      ...Buffer.from(pdf.bytes)
        .toString("latin1")
        .matchAll(/\/MediaBox/g),
    ].length;
    expect(pages).toBeGreaterThan(1);
    expect(pages).toBeLessThanOrEqual(most);
  },
  90_000,
);

test("the heights of a stylus are drawn, and stand in no table", async () => {
  const heights = Array.from({ length: 121 }, (_, i) => [((i * 7919) % 13) / 10 + 0.0625]);
  const input = { ...reportInput(workbook({ Surface: [["Height, µm"], ...heights, [null], ["=HATCH.SURFACE(A2:A122, 0.04)"]] })), name: "liner.xlsx" };
  expect(input.content!.measured.flatMap(({ tables }) => tables)).toEqual([]);
  expect(input.content!.surfaces).toHaveLength(1);
});
