import { unitWords } from "../core/words.ts";
import {
  boreHeadings,
  cylinderColumn,
  inCm3,
  lengthColumn,
  lengthFormat,
  numberColumn,
  RINGS,
  resultColumn,
  type SetupContext,
  VOLUME_UNIT,
  verdictColumn,
  whenFilled,
} from "./columns.ts";
import { type RowAt, SheetBuilder, type TableAt } from "./page.ts";

/** Bore readings, one bore a row, and what they come to. */
export function boresPage(given: SetupContext): { page: SheetBuilder; bores: TableAt } {
  const { choices, engine } = given;
  const headings = boreHeadings(choices.heights, choices.axes);
  const [first, last] = [headings[0]!, headings.at(-1)!];
  const format = lengthFormat(choices);
  const page = new SheetBuilder("Bores", "Bores", [
    `Diameters in ${unitWords(choices.unit)}. Heights from the top: just below the top of ring travel first. Thrust is across the crankshaft, pin along it; the other axes by their angle from thrust.`,
  ]);
  const bores = page.table(
    "BoreReadings",
    2,
    [
      cylinderColumn,
      ...headings.map((heading) => lengthColumn(heading, choices)),
      resultColumn("Taper", format, (row) => `=HATCH.TAPER(${row.span(first, last)},${choices.axes})`),
      verdictColumn(given, "Taper", "Taper", "Taper and out-of-round"),
      resultColumn("Out-of-round", format, (row) => `=HATCH.OUTOFROUND(${row.span(first, last)},${choices.axes})`),
      verdictColumn(given, "Out-of-round", "Out-of-round", "Taper and out-of-round"),
      resultColumn("Wear", format, (row) => `=HATCH.BOREWEAR(${row.span(first, last)},${engine.item("Standard bore")},${choices.axes})`),
      verdictColumn(given, "Wear", "Bore wear", "Bores"),
    ],
    choices.cylinders,
  );
  page.freeze(3, 1);
  return { page, bores };
}

/** Piston skirts and pins, and the clearances that they leave: to the bores where those are measured. */
export function pistonsPage(given: SetupContext, bores: TableAt | undefined): { page: SheetBuilder; pistons: TableAt } {
  const { choices } = given;
  const headings = boreHeadings(choices.heights, choices.axes);
  const format = lengthFormat(choices);
  const page = new SheetBuilder("Pistons", "Pistons and pins", [
    `Diameters in ${unitWords(choices.unit)}. Skirt at 90° to the pin, at the height that the maker's service manual says.${bores ? " Clearance is to the smallest reading of the bore." : ""}`,
  ]);
  const inItsBore = (at: TableAt) => [
    resultColumn("Piston clearance", format, (row) => {
      const readings = at.span(headings[0]!, headings.at(-1)!, row.index);
      return `=HATCH.PISTONCLEARANCE(${readings},${row.ref("Skirt")},"smallest",${choices.axes})`;
    }),
    verdictColumn(given, "Piston clearance", "Piston clearance", "Piston clearance"),
  ];
  const pistons = page.table(
    "PistonReadings",
    2,
    [
      cylinderColumn,
      lengthColumn("Skirt", choices),
      lengthColumn("Pin bore", choices),
      lengthColumn("Pin", choices),
      ...(bores ? inItsBore(bores) : []),
      resultColumn("Pin clearance", format, (row) => `=HATCH.CLEARANCE(${row.ref("Pin bore")},${row.ref("Pin")})`),
      verdictColumn(given, "Pin clearance", "Pin clearance", "Pin clearance"),
      { heading: "Remarks", look: "typed", width: 30 },
    ],
    choices.cylinders,
  );
  page.freeze(3, 1);
  return { page, pistons };
}

/** Room for `too wide: 0.0125 is over 0.0100, and filing cannot close it`, in characters. */
const TOO_WIDE = 56;

/** Ring end gaps and side clearances, one ring a row. */
export function ringsPage(given: SetupContext): { page: SheetBuilder; rings: TableAt } {
  const { choices, limits } = given;
  const format = lengthFormat(choices);
  const ringOf = (index: number) => RINGS[index % RINGS.length]!;
  const limitOf = (kind: string) => (index: number) => `${kind}, ${ringOf(index).toLowerCase()}`;
  const page = new SheetBuilder("Rings", "Rings", [
    `In ${unitWords(choices.unit)}. End gap with the ring square in its own bore, at the bottom of ring travel. To file: nothing off a gap inside its limits; one below them is filed to the middle of the two, or to the lower where there is no upper.`,
  ]);
  const rings = page.table(
    "RingReadings",
    2,
    [
      { heading: "Cylinder", look: "label", width: 9, cell: ({ index }) => Math.floor(index / RINGS.length) + 1 },
      { heading: "Ring", look: "label", width: 9, cell: ({ index }) => ringOf(index) },
      lengthColumn("End gap", choices),
      lengthColumn("Groove", choices),
      lengthColumn("Ring width", choices),
      verdictColumn(given, "End gap", limitOf("Ring end gap"), "Ring end gaps"),
      resultColumn("Side clearance", format, (row) => `=HATCH.RINGSIDE(${row.ref("Groove")},${row.ref("Ring width")})`),
      verdictColumn(given, "Side clearance", limitOf("Ring side clearance"), "Ring side clearance"),
      // Behind the others, because what it says of a gap that is too wide takes room.
      resultColumn(
        "To file",
        format,
        (row) => {
          const limit = limitOf("Ring end gap")(row.index);
          return whenFilled([row.ref("End gap")], `HATCH.RINGGAPFILE(${row.ref("End gap")},,${limits.lower(limit)},${limits.upper(limit)})`);
        },
        TOO_WIDE,
      ),
    ],
    choices.cylinders * RINGS.length,
  );
  page.freeze(3, 2);
  return { page, rings };
}

/** Volumes of each cylinder, its compression ratio and its squish. The bore is typed where no bores are measured. */
export function volumesPage(given: SetupContext, bores: TableAt | undefined): { page: SheetBuilder; volumes: TableAt } {
  const { choices, engine } = given;
  const headings = boreHeadings(choices.heights, choices.axes);
  const unit = `"${choices.unit}"`;
  const page = new SheetBuilder("Volumes", "Volumes and compression ratio", [
    `Volumes in ${VOLUME_UNIT}, lengths in ${unitWords(choices.unit)}. Chamber by burette. Piston crown: dish +, dome −, flat 0. Deck: piston below the face +, proud of it −.`,
  ]);
  const meanOf = (at: TableAt) =>
    resultColumn("Mean bore", lengthFormat(choices), ({ index }) => {
      const readings = at.span(headings[0]!, headings.at(-1)!, index);
      return `=IF(COUNT(${readings})<${headings.length},"",AVERAGE(${readings}))`;
    });
  const volumeOf = (heading: string, cells: (row: RowAt) => [string, string], call: (first: string, second: string) => string) =>
    resultColumn(heading, "0.00", (row) => whenFilled(cells(row), inCm3(choices, call(...cells(row)))));
  const disc = (diameter: string, thickness: string): string => `HATCH.DISCVOLUME(${diameter},${thickness},${unit})`;
  const volumes = page.table(
    "VolumeReadings",
    2,
    [
      cylinderColumn,
      numberColumn("Chamber", "0.00", `A volume in ${VOLUME_UNIT} above 0, typed as a number.`),
      numberColumn("Piston crown", "0.00", `A volume in ${VOLUME_UNIT}, typed as a number: dish positive, dome negative, flat 0.`, "number"),
      numberColumn(
        "Deck",
        lengthFormat(choices),
        `A length in ${unitWords(choices.unit)}, typed as a number: below the face positive, proud of it negative.`,
        "number",
      ),
      bores ? meanOf(bores) : lengthColumn("Mean bore", choices),
      volumeOf(
        "Swept",
        (row) => [row.ref("Mean bore"), engine.item("Stroke")],
        (bore, stroke) => `HATCH.SWEPTVOLUME(${bore},${stroke},1,${unit})`,
      ),
      volumeOf("Gasket", () => [engine.item("Gasket bore"), engine.item("Gasket thickness")], disc),
      volumeOf("Deck space", (row) => [row.ref("Mean bore"), row.ref("Deck")], disc),
      resultColumn("Ratio", "0.00", (row) => {
        const parts = ["Swept", "Chamber", "Gasket", "Deck space", "Piston crown"].map((heading) => row.ref(heading));
        return whenFilled(parts, `HATCH.COMPRESSIONRATIO(${parts.join(",")})`);
      }),
      resultColumn("U of the ratio", "General", (row) => {
        const [bore, burette, deck] = [bores ? "Bores" : "Mean bores", "Chambers and crowns", "Deck heights"].map((name) => engine.uncertainty(name));
        const [swept, stroke] = [row.ref("Swept"), engine.item("Stroke")];
        const volumes = [swept, row.ref("Chamber"), row.ref("Gasket"), row.ref("Deck space"), row.ref("Piston crown")];
        // A bore's share of what is swept counts twice, a deck's is to that as its height is to the stroke; the gasket is as its maker says.
        const own = [`2*${swept}*${bore}/${row.ref("Mean bore")}`, burette, "0", `${swept}*${deck}/${stroke}`, burette];
        return whenFilled([row.ref("Ratio"), bore!, burette!, deck!], `HATCH.RATIOUNCERTAINTY(${[...volumes, ...own].join(",")})`);
      }),
      verdictColumn(given, "Ratio", "Compression ratio", { column: "U of the ratio" }),
      resultColumn("Squish", lengthFormat(choices), (row) =>
        whenFilled([row.ref("Deck"), engine.item("Gasket thickness")], `HATCH.SQUISH(${row.ref("Deck")},${engine.item("Gasket thickness")})`),
      ),
      verdictColumn(given, "Squish", "Squish", "Deck heights"),
    ],
    choices.cylinders,
  );
  page.freeze(3, 1);
  return { page, volumes };
}
