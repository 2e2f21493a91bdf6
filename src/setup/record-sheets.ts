import type { BuildSheetChoices } from "./choices.ts";
import { dateColumn, numberColumn } from "./columns.ts";
import { SheetBuilder, type SheetColumn } from "./page.ts";
import { hasOneOf, type SheetWord } from "./sheets.ts";

const text = (heading: string, width: number, first: readonly string[] = []): SheetColumn => ({
  heading,
  look: "typed",
  width,
  ...(first.length ? { cell: ({ index }) => first[index] ?? "" } : {}),
});

const FASTENERS: readonly [name: string, of?: readonly SheetWord[]][] = [
  ["Main bearing caps", ["crankshaft"]],
  ["Big end caps", ["crankshaft", "pistons"]],
  ["Cylinder head"],
  ["Flywheel"],
];
const SPARE_FASTENERS = 12;

/** What was tightened to what, with which tool. No torque is built in. */
export function torquesPage(choices: BuildSheetChoices): SheetBuilder {
  const unit = choices.unit === "mm" ? "N·m" : "lbf·ft";
  const page = new SheetBuilder("Torques", "Torques", [
    `Torques in ${unit}, typed from the maker's service manual, with the lubricant that they are meant for: the same torque on an oiled thread stretches the bolt further than on a dry one. Bolts that are stretched to an angle are new each time where the manual says so.`,
  ]);
  const torque = (heading: string) => numberColumn(heading, "General", `A torque in ${unit} above 0, typed as a number.`);
  const names = FASTENERS.filter(([, of]) => hasOneOf(choices, of)).map(([name]) => name);
  page.table(
    "Torques",
    2,
    [
      text("Fastener", 24, names),
      text("Lubricant", 14),
      torque("First stage"),
      torque("Last stage"),
      numberColumn("Then angle, °", "General", "An angle in degrees above 0, typed as a number."),
      text("Source", 20),
      torque("Tightened to"),
      text("Wrench", 12),
      text("Done by", 12),
      dateColumn("Done on"),
      numberColumn("Re-torque at hours", "General", "Hours, typed as a number.", "at least zero"),
      dateColumn("Re-torqued on"),
      text("Remarks", 24),
    ],
    names.length + SPARE_FASTENERS,
  );
  page.freeze(3, 1);
  return page;
}

const PARTS = 40;

/** Parts fitted, ordered and in store. */
export function partsPage(): SheetBuilder {
  const page = new SheetBuilder("Parts list", "Parts list", [
    "New parts that go into this engine, and old ones that are used again. Size: oversize or undersize, grade or thickness.",
  ]);
  page.table(
    "PartsList",
    2,
    [
      text("Part", 26),
      text("Part number", 18),
      text("Size", 12),
      numberColumn("Quantity", "General", "A number above 0."),
      text("Supplier", 18),
      dateColumn("Ordered on"),
      dateColumn("Received on"),
      text("Fitted to", 16),
      text("Remarks", 28),
    ],
    PARTS,
    true,
  );
  page.freeze(3, 1);
  return page;
}

const NOTES = 15;
const PHOTOGRAPHS = 4;
/** Of a frame: rows high, and the columns of the notes two and two. */
const FRAME_ROWS = 15;

/** What was seen and decided, and frames for photographs. */
export function notesPage(): SheetBuilder {
  const page = new SheetBuilder("Notes", "Notes and photographs", ["What was seen, what was decided and why, what the customer agreed to."]);
  page.table("JobNotes", 2, [dateColumn("Day"), text("Written by", 14), text("About", 24), text("Note", 56), text("Agreed with", 18)], NOTES);
  const top = 2 + NOTES + 3;
  page.note(top - 1, "Photographs: put each over a frame (Insert, Picture), with what it shows in the line below.");
  for (let index = 0; index < PHOTOGRAPHS; index++) {
    const row = top + Math.floor(index / 2) * (FRAME_ROWS + 2);
    const [column, columns] = index % 2 === 0 ? [0, 3] : [3, 2];
    page.box({ row, column, rows: FRAME_ROWS, columns });
    page.box({ row: row + FRAME_ROWS, column, rows: 1, columns });
  }
  page.freeze(3, 0);
  return page;
}

const SHOP_ENTRIES = ["Shop name", "Address", "Address line 2", "Town", "Telephone", "E-mail", "Web page"];

/** Whose paper a report is. */
export function shopPage(): SheetBuilder {
  const page = new SheetBuilder("Shop", "Shop", ["These stand at the head of the report that the customer keeps. What stays blank is left out."]);
  page.table(
    "ShopHead",
    2,
    [
      { heading: "Item", look: "label", width: 18, cell: ({ index }) => SHOP_ENTRIES[index]! },
      { heading: "Entry", look: "typed", width: 44 },
    ],
    SHOP_ENTRIES.length,
  );
  const row = 2 + SHOP_ENTRIES.length + 3;
  page.note(row - 1, "Your mark: put a picture over this frame (Insert, Picture), PNG or JPEG.");
  page.box({ row, column: 0, rows: 6, columns: 2 });
  return page;
}
