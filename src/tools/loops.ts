import type { Spec } from "../core/define.ts";
import type { Param } from "../core/param.ts";

/** A loop of its own for each function that computes one value from single cells, numbers among them. */
export function loopsSource(specs: readonly Spec[]): string {
  const looped = specs.filter(
    ({ returns, inputs }) =>
      returns.kind === "value" && inputs.every(({ param }) => param.lifting === "element") && inputs.some(({ param }) => param.isMeasured),
  );
  return [
    "// Made by `npm run generate`. The loops are alike but for their inputs; each function has its own so",
    "// that the compiler can join it with that function's compute (src/core/batch.ts).",
    'import type { Loop } from "../core/batch.ts";',
    'import type { Result } from "../core/cell.ts";',
    "",
    "export const loops: Readonly<Record<string, Loop>> = {",
    ...looped.flatMap(loopLines),
    "};",
    "",
  ].join("\n");
}

/**
 * The first property keeps the shape of these objects apart from that of the declared params: with names
 * alone the compiler takes both for one kind, whose fields hold objects, and puts every number into one.
 */
const APART = "element: 0";

function loopLines({ name, inputs }: Spec): string[] {
  const measured = inputs.flatMap(({ param }, i) => (param.isMeasured ? [{ param, i }] : []));
  return [
    `  ${name}(compute, feeds, row, columns, closer) {`,
    ...inputs.flatMap(({ param }, i) => feedLines(param, i)),
    "    const line: Result[] = new Array(columns);",
    "    for (let c = 0; c < columns; c++) {",
    ...measured.map(({ i }) => `      const v${i} = x${i}[c & across${i}];`),
    `      if (${measured.map(({ param, i }) => isPlain(param, i)).join(" && ")}) {`,
    `        const made = compute({ ${APART}, ${inputs.map(({ name: input, param }, i) => `${input}: ${param.isMeasured ? "v" : "f"}${i}`).join(", ")} });`,
    '        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {',
    "          line[c] = made as Result;",
    "          continue;",
    "        }",
    "      }",
    "      line[c] = closer(row, c);",
    "    }",
    "    return line;",
    "  },",
  ];
}

function feedLines(param: Param<unknown>, i: number): string[] {
  if (!param.isMeasured) return [`    const f${i} = feeds[${i}]!.fixed;`];
  const leftOut = canBeLeftOut(param) ? `, isLeftOut: out${i}` : "";
  return [
    `    const { block: block${i}, down: down${i}, across: across${i}, least: least${i}, most: most${i}${leftOut} } = feeds[${i}]!;`,
    `    const x${i} = block${i}[row * down${i}]!;`,
  ];
}

const canBeLeftOut = (param: Param<unknown>): boolean => param.isOptional && param.fallback === undefined;

function isPlain(param: Param<unknown>, i: number): string {
  const plain = `typeof v${i} === "number" && v${i} >= least${i} && v${i} <= most${i}`;
  return canBeLeftOut(param) ? `(${plain} || (out${i} && v${i} === undefined))` : plain;
}
