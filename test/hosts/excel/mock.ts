import { OfficeMockObject } from "office-addin-mock";
import type { RunExcel } from "../../../src/hosts/excel/change.ts";
import type { CellAddress } from "../../../src/workbook/address.ts";
import type { ExcelBook, Look } from "./book.ts";
import { type Kit, namesOf, partsOf } from "./mock-lists.ts";
import { newPicture, newSheet } from "./mock-new.ts";
import { type Fields, RichApiError, type Setters, strict } from "./mock-object.ts";

export interface MockOptions {
  /** What a cell that a formula spilled into says its formula is. */
  spilled?: "the anchor's formula" | "its value";
  /** Thrown by the sync of this number, once so many of its commands are done: Excel takes nothing back. With `andAfter` by all after it too. */
  /** Cells whose content one answer can hold: a sync that asks for more throws as Excel on the web does. */
  mostCells?: number;
  failing?: { sync: number; error: Error; done?: number; andAfter?: boolean };
}

type Handler = () => Promise<unknown>;

/**
 * Excel as far as office-addin-mock carries it, over a workbook of our own: objects whose properties
 * must be loaded and synced before they are read. Reading too early throws, as in office.js, where the
 * mock alone would give a text. Calls and writes are queued and reach the workbook with the next sync.
 */
export function mockExcel(book: ExcelBook, options: MockOptions = {}): { run: RunExcel; changed(): void; calculated(): void } {
  const handlers: Handlers = { onChanged: new Set(), onCalculated: new Set() };
  const tell = (event: keyof Handlers) => () =>
    void setTimeout(() => {
      for (const handler of [...handlers[event]]) void handler();
    });
  const changed = tell("onChanged");
  return {
    changed,
    calculated: tell("onCalculated"),
    run: (batch) => batch(new Batch(book, options, handlers, changed).context as unknown as Excel.RequestContext),
  };
}

type Handlers = Record<"onChanged" | "onCalculated", Set<Handler>>;

/** Of every cell, in points. */
export const CELL = { width: 48, height: 15 };

/** One run: its queue, and the objects that its syncs fill. */
class Batch {
  readonly context: Fields;
  readonly #book: ExcelBook;
  readonly #options: MockOptions;
  readonly #handlers: Handlers;
  readonly #tell: () => void;
  readonly #queue: (() => void)[] = [];
  readonly #mocks: OfficeMockObject[] = [];
  readonly #kit: Kit = {
    object: (fields, members) => this.#object(fields, members),
    collection: (items) => this.#collection(items),
    queue: (command) => this.#queue.push(command),
  };
  #changes: "none" | "looks" | "cells" = "none";
  /** Cells whose content the next sync is to bring. */
  #asked = 0;

  constructor(book: ExcelBook, options: MockOptions, handlers: Handlers, tell: () => void) {
    this.#book = book;
    this.#options = options;
    this.#handlers = handlers;
    this.#tell = tell;
    this.context = { sync: () => this.#sync() };
    const members = {
      worksheets: this.#worksheets(),
      customXmlParts: partsOf(book, this.#kit),
      names: namesOf(book, this.#kit),
      tables: this.#tables(),
      protection: this.#object({ protected: book.isProtected }),
    };
    const getSelectedRange = () => this.#range(book.active ?? { sheet: book.sheets[0]!.name, row: 0, column: 0 }, book.selected.rows, book.selected.columns);
    this.context.workbook = this.#object({ name: book.name }, { ...members, getSelectedRange });
  }

  async #sync(): Promise<void> {
    const { failing } = this.#options;
    this.#book.syncs++;
    const fails = failing && (failing.sync === this.#book.syncs || (failing.andAfter && failing.sync < this.#book.syncs));
    if (this.#changes !== "none") this.#book.remember();
    const queue = this.#queue.splice(0);
    const asked = this.#asked;
    this.#asked = 0;
    if (asked > (this.#options.mostCells ?? Number.POSITIVE_INFINITY))
      throw new RichApiError("ResponsePayloadSizeLimitExceeded", "The response payload size has exceeded the limit.");
    for (const command of fails ? queue.slice(0, failing.done ?? 0) : queue) command();
    if (this.#changes === "cells") this.#tell();
    this.#changes = "none";
    if (fails) throw failing.error;
    for (const mock of this.#mocks) await mock.sync();
  }

  #object(fields: Fields, members: Fields = {}, setters: Setters = {}): Fields {
    const mock = new OfficeMockObject();
    // Not through the constructor, which takes null for an object.
    for (const [name, value] of Object.entries(fields)) (mock as unknown as { setValue(name: string, value: unknown): void }).setValue(name, value);
    this.#mocks.push(mock);
    return strict(mock, members, setters);
  }

  /** For the calls that may answer with a null object: of that only `isNullObject` can be read. */
  #orNull(there: boolean, fields: () => Fields, members: (own: Fields) => Fields = () => ({}), setters: Setters = {}): Fields {
    const inner = this.#object({ isNullObject: !there, ...(there ? fields() : {}) });
    const load = inner.load as (names: string) => void;
    const own: Fields = {
      load: (names: string) => {
        load("isNullObject");
        if (there) load(names);
      },
    };
    Object.assign(own, members(own));
    return new Proxy(inner, {
      get: (_, property) => own[String(property)] ?? inner[String(property)],
      set(_, property, value) {
        setters[String(property)]!(value);
        return true;
      },
    });
  }

  #worksheets(): Fields {
    return Object.assign(
      this.#collection(() => this.#book.sheets.map(({ name }) => this.#worksheet(name))),
      {
        getItemOrNullObject: (name: string) => this.#worksheet(name),
        getItem: (name: string) => this.#worksheet(name),
        add: (name: string) => {
          this.#changes = "cells";
          this.#queue.push(() => this.#book.addSheet(name));
          return newSheet(this.#book, name, (command) => this.#queue.push(command));
        },
        onChanged: this.#event("onChanged"),
        onCalculated: this.#event("onCalculated"),
      },
    );
  }

  #event(name: keyof Handlers): Fields {
    const handlers = this.#handlers[name];
    return {
      add: (handler: Handler) => {
        this.#queue.push(() => handlers.add(handler));
        return { remove: () => this.#queue.push(() => handlers.delete(handler)), context: this.context };
      },
    };
  }

  /** `load("items/name,…")` loads each item; the list itself is there after a sync. */
  #collection(items: () => Fields[]): Fields {
    let list: Fields[] = [];
    let synced = false;
    return {
      load: (names: string) => {
        list = items();
        for (const name of names.split(",")) {
          if (!name.startsWith("items/")) throw new RichApiError("InvalidArgument", `a list has no ${name}`);
          for (const item of list) (item.load as (name: string) => void)(name.slice("items/".length));
        }
        this.#queue.push(() => {
          synced = true;
        });
      },
      get items() {
        if (!synced) throw new RichApiError("PropertyNotLoaded", "the list was not loaded and synced");
        return list;
      },
    };
  }

  #tables(): Fields {
    return this.#collection(() =>
      (this.#book.called.tables ?? []).map(({ name, sheet, area, headerRows, totalsRows, columns }) =>
        this.#object(
          { name, showHeaders: headerRows === 1, showTotals: totalsRows === 1 },
          {
            columns: this.#collection(() => columns.map((heading) => this.#object({ name: heading }))),
            worksheet: this.#object({ name: sheet }),
            getRange: () => this.#range({ sheet, ...area }, area.rows, area.columns),
          },
        ),
      ),
    );
  }

  /** A result that is there after a sync. */
  #later(result: () => unknown): { readonly value: unknown } {
    let made: { value: unknown } | undefined;
    this.#queue.push(() => {
      made = { value: result() };
    });
    return {
      get value() {
        if (!made) throw new RichApiError("ValueNotLoaded", "the result was not synced");
        return made.value;
      },
    };
  }

  #shapes(sheet: string): Fields {
    const pictures = () => this.#book.sheet(sheet)?.pictures ?? [];
    const remove = (picture: Fields) => () => this.#queue.push(() => pictures().splice(pictures().indexOf(picture), 1));
    const addImage = (png: string) => {
      this.#changes = "cells";
      return newPicture(this.#book, sheet, png, (command) => this.#queue.push(command));
    };
    return Object.assign(
      this.#collection(() =>
        pictures().map((picture) => {
          const { id, top, left } = picture;
          return this.#object({ id, top, left, type: "Image" }, { delete: remove(picture), getAsImage: () => this.#later(() => picture.png) });
        }),
      ),
      { addImage },
    );
  }

  #worksheet(name: string): Fields {
    const sheet = this.#book.sheet(name);
    const protection = this.#object({ protected: sheet?.protected ?? false });
    const at = (row: number, column: number): CellAddress => ({ sheet: name, row, column });
    return this.#orNull(
      sheet !== undefined,
      () => ({ id: sheet!.id, name, visibility: sheet!.visibility }),
      ({ load }) => ({
        protection,
        names: namesOf(this.#book, this.#kit, name),
        shapes: this.#shapes(name),
        delete: () => {
          this.#changes = "cells";
          this.#queue.push(() => {
            // Office.js, Worksheet.delete: "will fail with an InvalidOperation exception".
            if (this.#book.sheet(name)?.visibility === "VeryHidden") throw new RichApiError("InvalidOperation", "the sheet is very hidden");
            this.#book.deleteSheet(name);
          });
        },
        load: (names: string) => {
          const own = names.split(",").filter((one) => one !== "protection/protected");
          if (own.length > 0) (load as (names: string) => void)(own.join(","));
          if (names.includes("protection/protected")) (protection.load as (name: string) => void)("protected");
        },
        activate: () => this.#queue.push(() => this.#book.activate(at(0, 0))),
        getCell: (row: number, column: number) => this.#range(at(row, column), 1, 1),
        getRangeByIndexes: (row: number, column: number, rows: number, columns: number) => this.#range(at(row, column), rows, columns),
        getUsedRangeOrNullObject: () => {
          const used = this.#book.used(name);
          if (!used) return this.#orNull(false, () => ({}));
          const [top, left, bottom, right] = used;
          return this.#range(at(top, left), bottom - top + 1, right - left + 1);
        },
      }),
      {
        visibility: (value) => {
          this.#changes = "cells";
          this.#queue.push(() => Object.assign(this.#book.sheet(name)!, { visibility: value }));
        },
      },
    );
  }

  #range(at: CellAddress, rows: number, columns: number, there = true): Fields {
    const book = this.#book;
    const places = Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_, c) => ({ ...at, row: at.row + r, column: at.column + c })));
    const each = (pick: (place: CellAddress) => unknown) => places.map((line) => line.map(pick));
    const write = (block: unknown) => {
      const written = block as unknown[][];
      if (written.length !== rows || written.some((line) => line.length !== columns))
        throw new RichApiError("InvalidArgument", "the block does not fit the range");
      this.#change("cells", at.sheet, () => {
        for (const [r, line] of places.entries()) for (const [c, place] of line.entries()) book.type(place, written[r]![c]);
      });
    };
    const worksheet = this.#object({ name: at.sheet });
    const anchor = this.#options.spilled === "the anchor's formula";
    return this.#orNull(
      there,
      () => ({
        rowIndex: at.row,
        columnIndex: at.column,
        rowCount: rows,
        columnCount: columns,
        values: each((place) => book.cell(place)?.value ?? ""),
        valueTypes: each((place) => book.cell(place)?.type ?? "Empty"),
        formulas: each((place) => book.formula(place, anchor) ?? book.cell(place)?.value ?? ""),
        hasSpill: places.flat().some((place) => book.isSpilled(place)),
        left: at.column * CELL.width,
        top: at.row * CELL.height,
      }),
      ({ load }) => ({
        worksheet,
        load: (names: string) => {
          const own = names.split(",").filter((one) => one !== "worksheet/name");
          if (own.length > 0) (load as (names: string) => void)(own.join(","));
          if (own.includes("values")) this.#asked += rows * columns;
          if (names.includes("worksheet/name")) (worksheet.load as (name: string) => void)("name");
        },
        format: { fill: this.#fill(at) },
        select: () => this.#queue.push(() => book.activate(at, rows, columns)),
        getSpillingToRangeOrNullObject: () => {
          const [down, across] = book.spill(at) ?? [1, 1];
          return this.#range(at, down, across, book.spill(at) !== undefined);
        },
      }),
      { formulas: write },
    );
  }

  /** Excel gives a cell without a fill the colour of a white one, and only the tint tells them apart. */
  #fill(at: CellAddress): Fields {
    const book = this.#book;
    const look = book.look(at);
    const fields = { color: look?.color ?? "#FFFFFF", pattern: look?.pattern ?? null, patternColor: look?.patternColor ?? null, tintAndShade: look ? 0 : null };
    const give = (change: Partial<Look>) => this.#change("looks", at.sheet, () => book.setLook(at, { color: "#FFFFFF", ...book.look(at), ...change }));
    return this.#object(
      fields,
      { clear: () => this.#change("looks", at.sheet, () => book.setLook(at, null)) },
      {
        // A colour alone makes a plain fill of it.
        color: (color) => this.#change("looks", at.sheet, () => book.setLook(at, { color: String(color) })),
        pattern: (pattern) => give({ pattern: String(pattern) }),
        patternColor: (patternColor) => give({ patternColor: String(patternColor) }),
      },
    );
  }

  #change(kind: "looks" | "cells", sheet: string, act: () => void): void {
    if (this.#changes !== "cells") this.#changes = kind;
    this.#queue.push(() => {
      if (this.#book.sheet(sheet)!.protected) throw new RichApiError("AccessDenied", "You cannot perform the requested operation.");
      act();
    });
  }
}
