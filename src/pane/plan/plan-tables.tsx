import type { ShownCell, ShownPlan, ShownTable } from "./plans.ts";

/** A plan as tables with the reason in each row, and what to know before trusting it. */
export function PlanTables({ shown: { tables, remarks, fault, notes } }: { shown: ShownPlan }) {
  return (
    <>
      {fault !== null && <p class="refusal">{fault}</p>}
      {tables
        .filter(({ rows }) => rows.length > 0)
        .map((table) => (
          <OneTable key={table.caption} table={table} />
        ))}
      {remarks.map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
      <p class="notice">The maker's service manual and a qualified technician decide; the plan only follows the numbers in the sheet.</p>
      {notes.length > 0 && (
        <details>
          <summary>Before you trust the plan</summary>
          {notes.map((note) => (
            <p key={note} class="notice">
              {note}
            </p>
          ))}
        </details>
      )}
    </>
  );
}

function OneTable({ table: { caption, columns, rows } }: { table: ShownTable }) {
  return (
    <table class="plan">
      <caption>{caption}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([head, ...cells], at) => (
          <tr key={at}>
            <th scope="row">
              <Shows cell={head!} />
            </th>
            {cells.map((cell, column) => (
              <td key={columns[column + 1]}>
                <Shows cell={cell} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Shows({ cell }: { cell: ShownCell }) {
  if (typeof cell === "string") return <>{cell}</>;
  return (
    <details>
      <summary>{cell.text}</summary>
      <ul>
        {cell.reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </details>
  );
}
