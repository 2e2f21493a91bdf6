import type { Spec } from "../core/define.ts";
import type { Param } from "../core/param.ts";

/** A loop of its own for each function that computes one value from single cells. */
export function loopsSource(specs: readonly Spec[]): string {
  const looped = specs.filter(
    ({ returns, inputs }) => returns.kind === "value" && inputs.length > 0 && inputs.every(({ param }) => param.lifting === "element"),
  );
  return [
    "// Made by `npm run generate`. The loops are alike but for their inputs; each function has its own so",
    "// that the compiler can join it with that function's compute (src/core/batch.ts).",
    'import type { Loop } from "../core/batch.ts";',
    "",
    "export const loops: Readonly<Record<string, Loop>> = {",
    ...looped.flatMap(loopLines),
    "};",
    "",
  ].join("\n");
}

function loopLines({ name, inputs }: Spec): string[] {
  return [
    `  ${name}(${inputs.some(({ param }) => param.isMeasured) ? "compute, numbers" : "compute, _numbers"}, ${inputs.every(({ param }) => param.isMeasured) ? "_fixed" : "fixed"}, closer, start, first, last, line) {`,
    ...inputs.flatMap(({ param }, i) => (param.isMeasured ? [`    const n${i} = numbers[${i}]!;`] : [`    const f${i} = fixed[${i}];`])),
    "    for (let c = first; c < last; c++) {",
    "      const e = start + c;",
    "      if (closer[e]) return c;",
    `      const made = compute({ ${inputs.map(({ name: input, param }, i) => `${input}: ${read(param, i)}`).join(", ")} });`,
    '      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;',
    "      else return c;",
    "    }",
    "    return last;",
    "  },",
  ];
}

function read(param: Param<unknown>, i: number): string {
  if (!param.isMeasured) return `f${i}`;
  const canBeLeftOut = param.isOptional && param.fallback === undefined;
  return canBeLeftOut ? `Number.isNaN(n${i}[e]!) ? undefined : n${i}[e]!` : `n${i}[e]!`;
}
