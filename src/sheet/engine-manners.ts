import { isErrorCode } from "../core/cell.ts";

/** The parts of the engine that this needs; its whole module or browser global fits. */
export interface MannersEngine {
  EvaluationError: new (message?: string, value?: string) => object;
  registries: { functionRegistry: object };
}

type Value = { value: unknown };
type Given = Value | undefined | (Value | undefined)[][];

interface OwnFunction {
  args: { type: string[]; acceptMatrix?: boolean; acceptErrors?: boolean; repeating?: boolean }[];
  compute: (this: unknown, ...args: Given[]) => unknown;
}

interface FunctionRegistry {
  content: Record<string, OwnFunction>;
  replace(name: string, own: OwnFunction): void;
}

const done = new WeakSet<object>();

/** Brings the engine's own functions to what other sheets do, where a shop would take harm. Doing it again changes nothing. */
export function likeOtherSheets(engine: MannersEngine): void {
  const registry = engine.registries.functionRegistry as FunctionRegistry;
  if (done.has(registry)) return;
  done.add(registry);
  refuseEmptyText(registry, engine);
  falseWithoutElse(registry);
  compareByKind(registry);
}

/**
 * Where a number is wanted, the engine takes empty text for 0; other sheets say `#VALUE!`. A cell
 * that says "nothing yet" must not turn into a measured zero.
 */
function refuseEmptyText(registry: FunctionRegistry, { EvaluationError }: MannersEngine): void {
  for (const [name, own] of Object.entries(registry.content)) {
    const numeric = own.args.map((arg) => arg.type.length === 1 && arg.type[0] === "NUMBER" && !arg.acceptMatrix && !arg.acceptErrors && !arg.repeating);
    if (!numeric.includes(true)) continue;
    const { compute } = own;
    registry.replace(name, {
      ...own,
      compute(...args) {
        for (let i = 0; i < args.length; i++) {
          if (numeric[i] && (args[i] as Value | undefined)?.value === "")
            return new EvaluationError("A number is wanted where there is empty text.", "#VALUE!");
        }
        return compute.apply(this, args);
      },
    });
  }
}

/** `IF` without its third argument gives FALSE in other sheets, 0 in the engine, which would read as a measured zero too. */
function falseWithoutElse(registry: FunctionRegistry): void {
  const own = registry.content.IF;
  if (!own) return;
  const { compute } = own;
  registry.replace("IF", {
    ...own,
    compute(...args) {
      return compute.apply(this, args.length === 2 ? [...args, { value: false }] : args);
    },
  });
}

const KINDS = ["number", "string", "boolean"];

/** Counts from 1; 0 for what is blank or an error, which the engine sees to. */
const rankOf = (value: unknown): number => (typeof value === "string" && isErrorCode(value) ? 0 : KINDS.indexOf(typeof value) + 1);

const BY_RANK: Readonly<Record<string, (difference: number) => boolean>> = {
  EQ: (difference) => difference === 0,
  NE: (difference) => difference !== 0,
  GT: (difference) => difference > 0,
  GTE: (difference) => difference >= 0,
  LT: (difference) => difference < 0,
  LTE: (difference) => difference <= 0,
};

/** In other sheets every truth value is above every text, and every text above every number; the engine takes TRUE for the text "TRUE". */
function compareByKind(registry: FunctionRegistry): void {
  for (const [name, holds] of Object.entries(BY_RANK)) {
    const own = registry.content[name];
    if (!own) continue;
    const { compute } = own;
    registry.replace(name, {
      ...own,
      compute(...args) {
        const [left, right] = args.map((arg) => rankOf((arg as Value | undefined)?.value));
        return left && right && left !== right ? { value: holds(left - right) } : compute.apply(this, args);
      },
    });
  }
}
