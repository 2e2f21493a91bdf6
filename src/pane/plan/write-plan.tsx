import { useState } from "preact/hooks";
import { counted, grouped } from "../../core/number-text.ts";
import { WorkbookCells } from "../../formula/workbook-cells.ts";
import type { WrittenPlan } from "../../plan/placement.ts";
import { areaText, placeName } from "../../workbook/address.ts";
import type { SheetHost } from "../../workbook/port.ts";
import { RangeField } from "../parts/range-field.tsx";
import { readArea } from "../parts/range-text.ts";
import { fieldsLike, useStored } from "../parts/stored-choices.ts";
import { today } from "../parts/text.ts";
import { TaskLines, useTask } from "../parts/use-task.tsx";
import type { Form, PlanName } from "./fields.ts";
import { planFor } from "./plans.ts";

interface Props {
  name: PlanName;
  form: Form;
  host: SheetHost;
}

type As = "formulas" | "values";

const FIRST: { place: string; as: As } = { place: "", as: "formulas" };

function whereFrom(given: unknown): typeof FIRST | undefined {
  const where = fieldsLike(FIRST, given);
  return where && { ...where, as: where.as === "values" ? "values" : "formulas" };
}

/** Writes the plan at a chosen cell as one step. Cells that hold something are named, and only written over when asked to. */
export function WritePlan({ name, form, host }: Props) {
  const [{ place, as }, setWhere] = useStored(`write ${name}`, FIRST, whereFrom);
  const [trouble, setTrouble] = useState<string | undefined>();
  const [inTheWay, setInTheWay] = useState<WrittenPlan["inTheWay"]>([]);
  const work = useTask();
  const moved = (text: string) => {
    setWhere((before) => ({ ...before, place: text }));
    setTrouble(undefined);
    setInTheWay([]);
  };
  const write = (overwrite: boolean) =>
    work.act("Writing the plan …", async () => {
      const snapshot = await host.read();
      const read = readArea(place, new WorkbookCells(snapshot));
      setTrouble("sentence" in read ? (place.trim() === "" ? "say where the plan is to stand: its first cell" : read.sentence) : undefined);
      if ("sentence" in read) return "";
      const { sheet, row, column } = read.given;
      const planned = planFor(name, snapshot, form, { at: { sheet, row, column }, date: today(), as, overwrite });
      if ("troubles" in planned) return "Not written: a field of the plan can no longer be read. Work it out again.";
      const { edits, area, refused, inTheWay: filled } = planned.written;
      setInTheWay(edits.length === 0 ? filled : []);
      if (refused !== null) return `Not written: ${refused}.`;
      if (edits.length === 0) return filled.length > 0 ? "Nothing was written: cells are in the way." : "There is nothing to write yet.";
      await host.write(edits);
      return `Written to ${areaText(area!)}. One step back takes it out again.`;
    });
  return (
    <section class="fields write" aria-label="Write the plan to the sheet">
      <h3>Write to the sheet</h3>
      <RangeField id="write-place" label="First cell" hint="For example Plan!A1" text={place} trouble={trouble} takesCell host={host} onText={moved} />
      <label class="field">
        <span>Written as</span>
        <select value={as} onChange={(event) => setWhere((before) => ({ ...before, as: event.currentTarget.value as As }))}>
          <option value="formulas">formulas, which follow the readings</option>
          <option value="values">values with the day</option>
        </select>
      </label>
      <div class="tools">
        <button type="button" aria-disabled={work.doing !== ""} onClick={() => write(false)}>
          Write to sheet
        </button>
      </div>
      <TaskLines {...work} />
      {inTheWay.length > 0 && (
        <div class="stale">
          <p>{inTheWayText(inTheWay)}</p>
          <button type="button" aria-disabled={work.doing !== ""} onClick={() => write(true)}>
            Write over them
          </button>
        </div>
      )}
    </section>
  );
}

const NAMED = 12;

function inTheWayText(cells: WrittenPlan["inTheWay"]): string {
  const names = cells.slice(0, NAMED).map(placeName).join(", ");
  const more = cells.length > NAMED ? ` and ${grouped(cells.length - NAMED)} more` : "";
  return `${counted(cells.length, "cell holds", "cells hold")} something: ${names}${more}.`;
}
