import { useState } from "preact/hooks";
import type { SheetHost } from "../../workbook/port.ts";
import { PlaceField } from "../parts/range-field.tsx";
import { FIELDS, type Field, type Form, isAsked, type PlanName } from "./fields.ts";

interface Props {
  name: PlanName;
  form: Form;
  troubles: Readonly<Record<string, string>>;
  host: SheetHost;
  onAnswer(key: string, text: string): void;
}

/** The form of a plan; what is asked for seldom stands behind a fold. */
export function PlanFields({ name, form, troubles, host, onAnswer }: Props) {
  const asked = FIELDS[name].filter((field) => isAsked(field, form));
  const rare = asked.filter(({ isRare }) => isRare);
  // A field that has an answer or a trouble is not hidden.
  const [isOpen, setOpen] = useState(false);
  const isShown = isOpen || rare.some(({ key }) => form[key] || troubles[key]);
  const show = (field: Field) => (
    <OneField key={field.key} field={field} text={form[field.key] ?? ""} trouble={troubles[field.key]} host={host} onAnswer={onAnswer} />
  );
  return (
    <div class="fields">
      {asked.filter(({ isRare }) => !isRare).map(show)}
      <details open={isShown} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>More</summary>
        <div class="fields">{rare.map(show)}</div>
      </details>
    </div>
  );
}

interface OneProps extends Pick<Props, "host" | "onAnswer"> {
  field: Field;
  text: string;
  trouble: string | undefined;
}

function OneField({ field, text, trouble, host, onAnswer }: OneProps) {
  const { key, label, kind, options = [], hint } = field;
  if (kind === "choice")
    return (
      <label class="field">
        <span>{label}</span>
        <select value={text} onChange={(event) => onAnswer(key, event.currentTarget.value)}>
          {options.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </label>
    );
  if (kind === "tick")
    return (
      <label class="tick">
        <input type="checkbox" checked={text === "yes"} onChange={(event) => onAnswer(key, event.currentTarget.checked ? "yes" : "no")} />
        <span>{label}</span>
      </label>
    );
  return (
    <PlaceField
      id={`plan-${key}`}
      label={label}
      hint={hint}
      text={text}
      trouble={trouble}
      takesSeveral={kind === "ranges"}
      host={host}
      onText={(typed) => onAnswer(key, typed)}
    />
  );
}
