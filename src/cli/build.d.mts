import type { Metafile, Plugin } from "esbuild";

export const ENGINE_BESIDE: Plugin;
export function buildCommandLine(out: string): Promise<Metafile>;
