import { Page, type TableAt } from "./page.ts";
import { cylinderColumn, type Given, lengthFormat, numberColumn, resultColumn, verdictColumn, volumeUnit, whenFilled } from "./parts.ts";
import { boreHeadings } from "./words.ts";

/** Volumes of each cylinder, its compression ratio and its squish. */
export function volumesPage(given: Given, bores: TableAt): { page: Page; volumes: TableAt } {
  const { choices, engine } = given;
  const headings = boreHeadings(choices.heights, choices.axes);
  const unit = `"${choices.unit}"`;
  const volume = volumeUnit(choices);
  const page = new Page("Volumes", "Volumes and compression ratio", [
    `Volumes in ${volume}, lengths in ${choices.unit}. Chamber by burette. Piston crown: dish +, dome −, flat 0. Deck: piston below the face +, proud of it −.`,
  ]);
  const volumes = page.table(
    "VolumeReadings",
    2,
    [
      cylinderColumn,
      numberColumn("Chamber", "0.00", `A volume in ${volume} above 0, typed as a number.`),
      numberColumn("Piston crown", "0.00", `A volume in ${volume}, typed as a number: dish positive, dome negative, flat 0.`, "number"),
      numberColumn("Deck", lengthFormat(choices), `A length in ${choices.unit}, typed as a number: below the face positive, proud of it negative.`, "number"),
      resultColumn("Mean bore", lengthFormat(choices), ({ index }) => {
        const readings = bores.span(headings[0]!, headings.at(-1)!, index);
        return `=IF(COUNT(${readings})<${headings.length},"",AVERAGE(${readings}))`;
      }),
      resultColumn("Swept", "0.00", (row) => `=HATCH.SWEPTVOLUME(${row.ref("Mean bore")},${engine.item("Stroke")},1,${unit})`),
      resultColumn("Gasket", "0.00", () => `=HATCH.DISCVOLUME(${engine.item("Gasket bore")},${engine.item("Gasket thickness")},${unit})`),
      resultColumn("Deck space", "0.00", (row) => whenFilled([row.ref("Deck")], `HATCH.DISCVOLUME(${row.ref("Mean bore")},${row.ref("Deck")},${unit})`)),
      resultColumn("Ratio", "0.00", (row) => {
        const parts = ["Swept", "Chamber", "Gasket", "Deck space", "Piston crown"].map((heading) => row.ref(heading));
        return whenFilled(parts, `HATCH.COMPRESSIONRATIO(${parts.join(",")})`);
      }),
      verdictColumn(given, "Ratio", "Compression ratio"),
      resultColumn("Squish", lengthFormat(choices), (row) =>
        whenFilled([row.ref("Deck")], `HATCH.SQUISH(${row.ref("Deck")},${engine.item("Gasket thickness")})`),
      ),
      verdictColumn(given, "Squish", "Squish", "Deck heights"),
    ],
    choices.cylinders,
  );
  page.freeze(3, 1);
  return { page, volumes };
}
