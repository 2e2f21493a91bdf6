import { boxName, type CellAddress } from "../../../src/workbook/address.ts";
import { rectangleIn } from "../../../src/xlsx/model.ts";
import type { ExcelBook, Note } from "./book.ts";
import type { Fields } from "./mock-object.ts";

type Tell = (command: () => void) => void;

const isLine = (on: string, isWide: boolean): boolean => {
  const [first = "", last = first] = on.split(":");
  const part = isWide ? /[A-Z]+/ : /\d+/;
  return part.exec(first)?.[0] === part.exec(last)?.[0];
};

/** What Excel refuses of what it is told: a line inside an area that has no inside. */
function check({ on, what }: Note): void {
  const inside = /getItem\(Inside(Vertical|Horizontal)\)/.exec(what)?.[1];
  if (inside && on.split(",").some((area) => isLine(area, inside === "Vertical"))) throw new Error(`${on} has no inside for a line ${inside}`);
}

/**
 * Something of Excel's that is only told what to become: whatever is set or called on it is noted with
 * the next sync, as `format.font.bold = true` on `B2:B4`. What a call gives back is told things in the same way.
 */
function told(tell: (note: Note) => void, on: string, path = ""): Fields {
  return new Proxy(() => {}, {
    get: (_, property) => (typeof property === "symbol" || property === "then" ? undefined : told(tell, on, path ? `${path}.${property}` : property)),
    set(_, property, value) {
      tell({ on, what: path ? `${path}.${String(property)}` : String(property), value });
      return true;
    },
    apply(_, __, args: unknown[]) {
      tell({ on, what: path, value: args });
      return told(tell, on, `${path}(${args.map(String).join()})`);
    },
  }) as unknown as Fields;
}

/** A sheet that is being added: its cells are written, everything else is noted. */
export function newSheet(book: ExcelBook, name: string, queue: Tell): Fields {
  const note = (one: Note) =>
    queue(() => {
      check(one);
      book.sheet(name)!.notes.push(one);
    });
  const range = (row: number, column: number, rows: number, columns: number): Fields => {
    const on = boxName({ row, column, rows, columns });
    return new Proxy(told(note, on), {
      get: (target, property) => (property === Symbol.toPrimitive || property === "toString" ? () => on : target[String(property)]),
      set(target, property, value) {
        if (property !== "formulas") return Reflect.set(target, property, value);
        queue(() => {
          for (const [r, line] of (value as unknown[][]).entries()) for (const [c, cell] of line.entries()) book.type(at(row + r, column + c), cell);
        });
        return true;
      },
    });
  };
  const at = (row: number, column: number): CellAddress => ({ sheet: name, row, column });
  const tables = {
    add: (area: Fields) => {
      const { row, column, columns } = rectangleIn(String(area), "the mock");
      const table = { name: "", sheet: name, area: rectangleIn(String(area), "the mock"), headerRows: 1, totalsRows: 0, columns: [] as string[] };
      queue(() => {
        for (let c = 0; c < columns; c++) table.columns.push(String(book.cell(at(row, column + c))?.value));
        book.called = { ...book.called, tables: [...(book.called.tables ?? []), table] };
      });
      return new Proxy(told(note, String(area), "table"), {
        set(target, property, value) {
          if (property === "name") queue(() => Object.assign(table, { name: value }));
          return Reflect.set(target, property, value);
        },
      });
    },
  };
  const own: Fields = { getRangeByIndexes: range, getRanges: (address: string) => told(note, address), tables };
  return new Proxy(told(note, "sheet"), {
    get: (target, property) => own[String(property)] ?? target[String(property)],
    set(target, property, value) {
      if (property !== "visibility") return Reflect.set(target, property, value);
      queue(() => Object.assign(book.sheet(name)!, { visibility: value }));
      return true;
    },
  });
}

/** A picture that is being put into a sheet. */
export function newPicture(book: ExcelBook, sheet: string, png: string, queue: Tell): Fields {
  const picture: Fields = { png };
  queue(() => {
    picture.id = `{picture-${++book.made}}`;
    book.sheet(sheet)!.pictures.push(picture);
  });
  return new Proxy(
    {},
    {
      set(_, property, value) {
        queue(() => Object.assign(picture, { [property]: value }));
        return true;
      },
    },
  );
}
