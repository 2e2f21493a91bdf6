import { useState } from "preact/hooks";
import { blankHelp, type Example, NAMESPACE, SEPARATORS, type Spec, signature } from "../core/define.ts";
import type { BroadcastKind, Param } from "../core/param.ts";

/** Puts text on the clipboard; says whether it got there. Frames and older web views refuse the first way. */
async function copy(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return copyBySelection(text);
  }
}

function copyBySelection(text: string): boolean {
  const before = document.activeElement;
  const field = document.createElement("textarea");
  field.value = text;
  field.readOnly = true;
  field.className = "heard-only";
  document.body.append(field);
  field.select();
  try {
    return document.execCommand("copy");
  } catch {
    return false;
  } finally {
    field.remove();
    if (before instanceof HTMLElement) before.focus();
  }
}

/** The manual of one function, folded away until it is opened. */
export function FunctionHelp({ spec }: { spec: Spec }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details class="function" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span class="function-name">{spec.name}</span> <span class="function-summary">{spec.summary}</span>
      </summary>
      {isOpen && <Manual spec={spec} />}
    </details>
  );
}

function Manual({ spec }: { spec: Spec }) {
  const blank = blankHelp(spec);
  return (
    <div class="manual">
      <p>
        <code class="signature">
          ={NAMESPACE}.{signature(spec)}
        </code>
      </p>
      {spec.inputs.length > 0 && (
        <>
          <h4>Inputs</h4>
          <dl>
            {spec.inputs.map(({ name, param }) => (
              <Input key={name} name={name} param={param} />
            ))}
          </dl>
        </>
      )}
      <h4>Gives</h4>
      <p>{spec.returns.help}</p>
      {spec.returns.columns && <p>Columns: {spec.returns.columns.join(", ")}</p>}
      <h4>Definition</h4>
      <p>{spec.definition}</p>
      <h4>Examples</h4>
      <ul class="examples">
        {spec.examples.map((example) => (
          <ExampleRow key={example.formula} example={example} />
        ))}
      </ul>
      <p>{SEPARATORS}</p>
      {blank && (
        <>
          <h4>Blank cells</h4>
          <p>{blank}</p>
        </>
      )}
      <h4>Source</h4>
      <p>{spec.source}</p>
      {spec.notes && spec.notes.length > 0 && (
        <>
          <h4>Before you trust the number</h4>
          {spec.notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </>
      )}
    </div>
  );
}

const TAKES: Readonly<Record<BroadcastKind, string>> = {
  element: "a cell, or a range for a whole batch",
  bore: "the range of one bore, or a cell",
  list: "a range, read as one list",
  grid: "a range, read as one table",
  cells: "a range, read as one table",
  axes: "one cell",
};

function Input({ name, param }: { name: string; param: Param<unknown> }) {
  return (
    <>
      <dt>
        <code>{name}</code> <span class="left-out">{leftOut(param)}</span>
      </dt>
      <dd>
        {param.help}. Must be {param.want}: {TAKES[param.broadcastKind]}.
      </dd>
    </>
  );
}

function leftOut({ isOptional, fallback }: Param<unknown>): string {
  if (!isOptional) return "needed";
  return fallback === undefined ? "may be left out" : `${typeof fallback === "boolean" ? String(fallback).toUpperCase() : fallback} if left out`;
}

function ExampleRow({ example }: { example: Example }) {
  const [copied, setCopied] = useState<"" | "yes" | "no">("");
  const word = copied === "yes" ? "Copied" : "Copy";
  return (
    <li>
      <code>{example.formula}</code>
      <div class="example-foot">
        <span>gives {givesText(example.gives)}</span>
        <button
          type="button"
          aria-label={`${word} ${example.formula}`}
          onClick={async () => setCopied((await copy(example.formula)) ? "yes" : "no")}
          onBlur={() => setCopied("")}
        >
          {word}
        </button>
      </div>
      <p class={copied === "yes" ? "heard-only" : undefined} role="status">
        {COPY_NOTICE[copied]}
      </p>
    </li>
  );
}

const COPY_NOTICE = { "": "", yes: "Copied.", no: "The clipboard is closed to the pane here: mark the formula and press Ctrl+C." };

/** Rows of a block stand apart by a slash, which no result holds. */
function givesText(gives: Example["gives"]): string {
  if (typeof gives === "string") return gives === "" ? "an empty cell" : gives;
  if (typeof gives === "number") return String(gives);
  return gives.map((row) => row.map((cell) => (cell === "" ? "(empty)" : String(cell))).join(", ")).join(" / ");
}
