import { useState } from "preact/hooks";
import { areaText } from "../../workbook/address.ts";
import type { SheetHost } from "../../workbook/port.ts";
import { sentenceOf } from "./use-task.tsx";

interface Props {
  id: string;
  label: string;
  hint?: string | undefined;
  text: string;
  /** Why the text cannot be taken. */
  trouble?: string | undefined;
  /** Several ranges, one a line: a selection is put below those that are there. */
  takesSeveral?: boolean;
  /** One cell, as the place to write to: of a selection its first. */
  takesCell?: boolean;
  host: SheetHost;
  onText(text: string): void;
}

/** A field for a place in the workbook, typed or taken over from what is selected there. */
export function RangeField({ id, label, hint, text, trouble, takesSeveral = false, takesCell = false, host, onText }: Props) {
  const [refusal, setRefusal] = useState("");
  const take = async () => {
    try {
      const selected = await host.selection();
      const taken = areaText(takesCell ? { ...selected, rows: 1, columns: 1 } : selected);
      onText(takesSeveral && text.trim() !== "" ? `${text.trimEnd()}\n${taken}` : taken);
      setRefusal("");
    } catch (error) {
      setRefusal(sentenceOf(error));
    }
  };
  const said = refusal || trouble;
  const shared = {
    id,
    value: text,
    spellcheck: false,
    autocomplete: "off",
    "aria-invalid": said ? true : undefined,
    "aria-describedby": `${id}-says`,
  } as const;
  return (
    <div class="field place-field">
      <label for={id}>{label}</label>
      <button type="button" aria-label={`Take selection for ${label}`} onClick={take}>
        Take selection
      </button>
      {takesSeveral ? (
        <textarea {...shared} rows={Math.min(6, Math.max(2, text.split("\n").length))} onInput={(event) => onText(event.currentTarget.value)} />
      ) : (
        <input {...shared} type="text" onInput={(event) => onText(event.currentTarget.value)} />
      )}
      <p id={`${id}-says`} class={said ? "trouble" : "hint"}>
        {said || hint}
      </p>
    </div>
  );
}
