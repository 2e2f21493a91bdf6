import type { ExcelBook } from "./book.ts";
import type { Fields } from "./mock-object.ts";

/** What a run of the mocked Excel makes its objects with. */
export interface Kit {
  object(fields: Fields, members?: Fields): Fields;
  collection(items: () => Fields[]): Fields;
  queue(command: () => void): unknown;
}

/** Names of the whole workbook, or of one sheet. */
export function namesOf(book: ExcelBook, { object, collection, queue }: Kit, sheet?: string): Fields {
  const items = () => (book.called.names ?? []).filter((one) => one.sheet === sheet);
  const remove = (name: string) => () =>
    queue(() => {
      book.called = { ...book.called, names: (book.called.names ?? []).filter((one) => one.sheet !== sheet || one.name !== name) };
    });
  const add = (name: string, formula: string) =>
    queue(() => {
      book.called = { ...book.called, names: [...(book.called.names ?? []), { name, formula }] };
    });
  return Object.assign(
    collection(() => items().map(({ name, formula }) => object({ name, formula }, { delete: remove(name) }))),
    { add },
  );
}

/** Parts of the workbook file, by their namespaces. */
export function partsOf({ parts }: ExcelBook, { object, collection, queue }: Kit): Fields {
  const part = (entry: (typeof parts)[number]) =>
    object(
      { id: entry.id },
      {
        getXml: () => {
          const result: { value?: string } = {};
          queue(() => {
            result.value = entry.xml;
          });
          return result;
        },
        setXml: (xml: string) => queue(() => Object.assign(entry, { xml })),
        delete: () => queue(() => parts.splice(parts.indexOf(entry), 1)),
      },
    );
  return {
    getByNamespace: (namespace: string) => collection(() => parts.filter(({ xml }) => xml.includes(`xmlns="${namespace}"`)).map(part)),
    add: (xml: string) => queue(() => parts.push({ id: `{${parts.length}}`, xml })),
  };
}
