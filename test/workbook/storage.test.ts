import fc from "fast-check";
import { parseXml } from "../../src/tools/xml-tree.ts";
import { STORAGE_NAMESPACE, storageXml, storedTextsIn } from "../../src/workbook/storage.ts";

test("any texts under any keys come back", () => {
  const texts = fc.uniqueArray(fc.tuple(fc.string({ unit: "binary" }), fc.string({ unit: "binary" })), { selector: ([key]) => key });
  fc.assert(
    fc.property(texts, (pairs) => {
      const kept = new Map(pairs.filter(([key]) => key !== "__proto__"));
      expect(storedTextsIn(storageXml(kept))).toEqual(kept);
    }),
  );
});

test("it is well-formed XML of our namespace", () => {
  const root = parseXml(storageXml(new Map([["layout", 'B2:C5 & <more> "x" ]]>']])));
  expect([root.name, root.namespace, root.text]).toEqual(["kept", STORAGE_NAMESPACE, '{"layout":"B2:C5 & <more> \\"x\\" ]]>"}']);
});

test("what another program made of it is read: a declaration, a prefix, quotes as entities", () => {
  const xml = `<?xml version="1.0"?>\n<k:kept xmlns:k="${STORAGE_NAMESPACE}">{&quot;layout&quot;:&#34;B2 &#x26; &apos;C&apos;&#34;}</k:kept>\n`;
  expect(storedTextsIn(xml)).toEqual(new Map([["layout", "B2 & 'C'"]]));
});

test.each(["", "<other/>", "<kept>not json</kept>", "<kept>null</kept>", "<kept>&#x110000;</kept>", "<kept>"])("%s holds nothing, and is no fault", (xml) => {
  expect(storedTextsIn(xml)).toEqual(new Map());
});
