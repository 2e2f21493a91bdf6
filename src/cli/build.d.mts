import type { Metafile, Plugin } from "esbuild";

export const ENGINE_AS_MODULE: Plugin;
export function buildCommandLine(out: string): Promise<Metafile>;
