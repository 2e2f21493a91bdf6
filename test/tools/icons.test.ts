import { readdirSync } from "node:fs";
import { drawIcons, ICON_SIZES, ICONS } from "../../src/tools/icons.ts";

const size = (png: Buffer) => [png.readUInt32BE(16), png.readUInt32BE(20)];

test("the repository holds a picture of every size that the tool draws, and no other", () => {
  const names = ICON_SIZES.map((one) => `icon-${one}.png`).sort();
  expect(readdirSync(ICONS).sort()).toEqual(names);
});

test("the drawing gives a PNG of each size asked for, with something on it", async () => {
  const drawn = await drawIcons([16, 80]);
  expect([...drawn].map(([asked, png]) => [asked, ...size(png)])).toEqual([
    [16, 16, 16],
    [80, 80, 80],
  ]);
  // An empty picture of this size packs into far less.
  expect(drawn.get(80)!.length).toBeGreaterThan(1000);
}, 60_000);
