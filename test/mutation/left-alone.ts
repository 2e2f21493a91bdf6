import { declareValuePlugin, PluginKind } from "@stryker-mutator/api/plugin";
import { helpText, type SyntaxPlace } from "./help-text.ts";

export const strykerPlugins = [declareValuePlugin(PluginKind.Ignore, "help-text", { shouldIgnore: (place) => helpText(place as unknown as SyntaxPlace) })];
