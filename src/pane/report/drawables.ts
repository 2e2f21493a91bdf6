import { commonExaggeration } from "../../drawings/bore.ts";
import { drawBoreProfile } from "../../drawings/bore-profile.ts";
import { drawChangePlot } from "../../drawings/change-plot.ts";
import { drawCompressionBars } from "../../drawings/compression-bars.ts";
import { drawFaceHeights } from "../../drawings/face-heights.ts";
import { drawRoundnessTrace } from "../../drawings/roundness-trace.ts";
import { drawRunOut } from "../../drawings/run-out-trace.ts";
import { drawSurfaceProfile } from "../../drawings/surface-profile.ts";
import type { Drawn } from "../../drawings/svg.ts";
import type { SheetContent } from "../../report/content.ts";

/** Something in the workbook that can be drawn. */
export interface Drawable {
  /** Its kind, its name and where it stands. */
  title: string;
  draw(width: number): Drawn;
}

/** All that can be drawn, by kind; bores are exaggerated alike, so that they can be set beside one another. */
export function drawablesIn({ bores, traces, turns, faces, surfaces, tests, changes }: SheetContent): Drawable[] {
  const factorOf = commonExaggeration(bores.map(({ what }) => what));
  const titled = (kind: string, { what, place }: { what: { name: string }; place: string }) =>
    what.name === place ? `${kind}: ${place}` : `${kind}: ${what.name} (${place})`;
  return [
    ...bores.map((bore) => {
      const factor = factorOf(bore.what);
      return {
        title: titled("Bore profile", bore),
        draw: (width: number) => drawBoreProfile(bore.what, { width, ...(factor === undefined ? {} : { factor }) }),
      };
    }),
    ...traces.map((trace) => ({ title: titled("Roundness trace", trace), draw: (width: number) => drawRoundnessTrace(trace.what, { width }) })),
    ...turns.map((turn) => ({ title: titled("Run-out", turn), draw: (width: number) => drawRunOut(turn.what, { width }) })),
    ...faces.map((face) => ({ title: titled("Face heights", face), draw: (width: number) => drawFaceHeights(face.what, { width }) })),
    ...surfaces.map((profile) => ({ title: titled("Surface profile", profile), draw: (width: number) => drawSurfaceProfile(profile.what, { width }) })),
    ...tests.map((test) => ({ title: titled("Compression test", test), draw: (width: number) => drawCompressionBars(test.what, { width }) })),
    ...changes.map((plot) => ({ title: titled("Changes", plot), draw: (width: number) => drawChangePlot(plot.what, { width }) })),
  ];
}
