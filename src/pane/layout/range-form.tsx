import { useMemo, useState } from "preact/hooks";
import type { Fixed, Role } from "../../layout/mapping.ts";
import type { RangeNow } from "../../layout/ranges.ts";
import { CHARACTERISTICS } from "../../vocabulary/characteristics.ts";
import { parseHeading } from "../../vocabulary/parse-heading.ts";
import { UNITS } from "../../vocabulary/units.ts";
import { areaText } from "../../workbook/address.ts";
import type { SheetHost } from "../../workbook/port.ts";
import { RangeField } from "../parts/range-field.tsx";
import type { ListedRange } from "./entries.ts";

interface EntryRowProps {
  entry: ListedRange;
  now: RangeNow;
  host: SheetHost;
  onUse(isUsed: boolean): void;
  onSelect(): void;
  onChange(said: RangeAnswers): Promise<Troubles>;
}

/** One range: whether it is used, where it is, what it holds, and what else may be said of it. */
export function ListedRangeRow({ entry, now, host, onUse, onSelect, onChange }: EntryRowProps) {
  const place = areaText(now.area);
  const was = useMemo(() => ({ ...NO_ANSWERS, ...entry.range.fixed, place }), [entry, place]);
  const [said, setSaid] = useState(was);
  const [isOpen, setOpen] = useState(false);
  return (
    <li>
      <span class="finding-head">
        <label class="tick">
          <input type="checkbox" checked={entry.isUsed} aria-label={`Use ${place}`} onChange={(event) => onUse(event.currentTarget.checked)} />
          <span>Use</span>
        </label>
        <button type="button" class="place" onClick={onSelect}>
          {place}
        </button>
      </span>
      {now.what && <span>{now.what}</span>}
      {now.trouble && <span class="trouble">{now.trouble}</span>}
      {entry.doubts
        .filter((doubt) => doubt !== now.trouble)
        .map((doubt) => (
          <span key={doubt} class="hint">
            Look at this: {doubt}
          </span>
        ))}
      <details
        open={isOpen}
        onToggle={(event) => {
          setOpen(event.currentTarget.open);
          if (event.currentTarget.open !== isOpen) setSaid(was);
        }}
      >
        <summary aria-label={`Change ${place}`}>Change</summary>
        {isOpen && (
          <RangeForm
            id={`entry-${entry.id}`}
            said={said}
            submit="Change it"
            host={host}
            onSaid={setSaid}
            onSubmit={async () => {
              const troubles = await onChange(said);
              if (Object.keys(troubles).length === 0) setOpen(false);
              return troubles;
            }}
          />
        )}
      </details>
    </li>
  );
}

/** What somebody says of a range; a blank leaves it to the headings. */
export interface RangeAnswers {
  place: string;
  role: string;
  characteristic: string;
  engine: string;
  cylinder: string;
  position: string;
  unit: string;
}

export const NO_ANSWERS: RangeAnswers = { place: "", role: "", characteristic: "", engine: "", cylinder: "", position: "", unit: "" };

export type Troubles = Partial<Record<"place" | "characteristic", string>>;

const ROLES: readonly (readonly [role: Role | "", words: string])[] = [
  ["", "what the headings say"],
  ["value", "readings"],
  ["lower", "lower limits"],
  ["upper", "upper limits"],
  ["uncertainty", "uncertainties U"],
  ["near", "distances that are near a limit"],
  ["nominal", "nominal sizes"],
];

const REST: readonly (readonly [key: "engine" | "cylinder" | "position", label: string, hint: string])[] = [
  ["engine", "Engine", "If all of them are of one engine"],
  ["cylinder", "Cylinder", "If all of them are of one cylinder"],
  ["position", "Place on the part", "If all of them are taken there: top thrust, second, inlet …"],
];

/** In the words that limits and rules go by. */
export function fixedOf({ place: _, role, characteristic, ...others }: RangeAnswers): Fixed {
  const name = parseHeading(characteristic.trim(), ["characteristic"]).characteristic ?? "";
  const said = Object.entries({ ...others, role, characteristic: name }).flatMap(([key, text]) => (text.trim() === "" ? [] : [[key, text.trim()]]));
  return Object.fromEntries(said);
}

interface Props {
  id: string;
  said: RangeAnswers;
  submit: string;
  host: SheetHost;
  onSaid(said: RangeAnswers): void;
  /** Takes what was said; resolves to what cannot be taken. */
  onSubmit(): Promise<Troubles>;
}

/** A range and what it is. */
export function RangeForm({ id, said, submit, host, onSaid, onSubmit }: Props) {
  const [troubles, setTroubles] = useState<Troubles>({});
  const say = (key: keyof RangeAnswers, text: string) => {
    onSaid({ ...said, [key]: text });
    setTroubles({ ...troubles, [key]: undefined });
  };
  const rest = REST.some(([key]) => said[key]) || said.unit !== "";
  return (
    <div class="fields">
      <RangeField
        id={`${id}-place`}
        label="Range"
        hint="The numbers, with or without their headings"
        text={said.place}
        trouble={troubles.place}
        host={host}
        onText={(text) => say("place", text)}
      />
      <label class="field">
        <span>These are</span>
        <select value={said.role} onChange={(event) => say("role", event.currentTarget.value)}>
          {ROLES.map(([role, words]) => (
            <option key={role} value={role}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <div class="field">
        <label for={`${id}-of`}>Of</label>
        <input
          id={`${id}-of`}
          type="text"
          list={`${id}-names`}
          autocomplete="off"
          aria-invalid={troubles.characteristic ? true : undefined}
          aria-describedby={`${id}-of-says`}
          value={said.characteristic}
          onInput={(event) => say("characteristic", event.currentTarget.value)}
        />
        <datalist id={`${id}-names`}>
          {Object.keys(CHARACTERISTICS).map((name) => (
            <option key={name} value={name} />
          ))}
        </datalist>
        <p id={`${id}-of-says`} class={troubles.characteristic ? "trouble" : "hint"}>
          {troubles.characteristic ?? "Bore, piston skirt, ring end gap …; blank: what the headings say"}
        </p>
      </div>
      <details open={rest}>
        <summary>More</summary>
        <div class="fields">
          {REST.map(([key, label, hint]) => (
            <div key={key} class="field">
              <label for={`${id}-${key}`}>{label}</label>
              <input
                id={`${id}-${key}`}
                type="text"
                autocomplete="off"
                maxLength={100}
                aria-describedby={`${id}-${key}-hint`}
                value={said[key]}
                onInput={(event) => say(key, event.currentTarget.value)}
              />
              <p id={`${id}-${key}-hint`} class="hint">
                {hint}
              </p>
            </div>
          ))}
          <label class="field">
            <span>Unit</span>
            <select value={said.unit} onChange={(event) => say("unit", event.currentTarget.value)}>
              <option value="">what the headings say</option>
              {Object.keys(UNITS).map((unit) => (
                <option key={unit} value={unit}>
                  {unit}
                </option>
              ))}
            </select>
          </label>
        </div>
      </details>
      <div class="tools">
        <button type="button" onClick={() => onSubmit().then(setTroubles)}>
          {submit}
        </button>
      </div>
    </div>
  );
}
