import { define, value } from "../../core/define.ts";
import { VERSION } from "../../core/version.ts";

/** The version of Crosshatch that calculates in this sheet, as the package declares it. */
export const version = define({
  name: "VERSION",
  group: "about",
  role: "assists",
  summary: "The version of Crosshatch that calculates in this sheet",
  definition: "major.minor.patch; results change only with the first or second number",
  source: "semantic versioning 2.0.0",
  params: {},
  returns: value("the version as text"),
  examples: [{ formula: "=HATCH.VERSION()", gives: VERSION }],
  notes: ["Put it on a build sheet that is kept: a later reader then knows what calculated it."],
  compute: () => VERSION,
});
