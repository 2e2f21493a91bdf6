import type { Side } from "./sides.ts";

interface Props {
  id: string;
  label: string;
  side: Side;
  /** Sheets of the open workbook. */
  sheets: readonly string[];
  onSide(side: Side): void;
}

const SHEET = "sheet:";

/** One side of a comparison, chosen among the open workbook, its sheets and a file. */
export function SideField({ id, label, side, sheets, onSide }: Props) {
  const value = side.from === "sheet" ? SHEET + side.sheet : side.from;
  // A sheet that is kept as chosen is offered also before the sheets are known, or when it is gone.
  const offered = side.from === "sheet" && !sheets.includes(side.sheet) ? [...sheets, side.sheet] : sheets;
  const choose = (chosen: string) => {
    if (chosen.startsWith(SHEET)) onSide({ from: "sheet", sheet: chosen.slice(SHEET.length) });
    else onSide(chosen === "file" ? { from: "file", file: null } : { from: "workbook" });
  };
  return (
    <div class="field">
      <label for={`side-${id}`}>{label}</label>
      <select id={`side-${id}`} value={value} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="file">a file: another workbook, or readings as CSV</option>
        <option value="workbook">this workbook</option>
        {offered.map((sheet) => (
          <option key={sheet} value={SHEET + sheet}>
            the sheet {sheet}
          </option>
        ))}
      </select>
      {side.from === "file" && (
        <>
          <input
            type="file"
            accept=".xlsx,.csv"
            aria-label={`File for the side ${label.toLowerCase()}`}
            aria-describedby={`side-${id}-hint`}
            onChange={(event) => onSide({ from: "file", file: event.currentTarget.files?.[0] ?? null })}
          />
          <p id={`side-${id}-hint`} class="hint">
            An .xlsx, whose formulas count as they were saved, or a .csv with one reading a line. Read here, sent nowhere.
          </p>
        </>
      )}
    </div>
  );
}
