import type { Metafile } from "esbuild";

export function buildCommandLine(out: string): Promise<Metafile>;
