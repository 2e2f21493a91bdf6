import { join, resolve } from "node:path";
import { copyNames } from "../../src/cli/marked-copies.ts";

const names = (...files: string[]): Record<string, string> => Object.fromEntries(copyNames(files));

test("a copy has the name of its workbook", () => {
  expect(names(join("a", "build.xlsx"), join("b", "strip.xlsx"))).toEqual({ [join("a", "build.xlsx")]: "build.xlsx", [join("b", "strip.xlsx")]: "strip.xlsx" });
});

test("workbooks of the same name are told apart by their folders, as many of them as it takes", () => {
  expect(Object.values(names(join("a", "build.xlsx"), join("b", "build.xlsx")))).toEqual(["build (a).xlsx", "build (b).xlsx"]);
  expect(Object.values(names(join("2024", "port", "build.xlsx"), join("2025", "port", "build.xlsx"), join("2025", "star", "build.xlsx")))).toEqual([
    "build (2024 port).xlsx",
    "build (2025 port).xlsx",
    "build (2025 star).xlsx",
  ]);
});

test("capitals and small letters are the same name, as they are to many disks", () => {
  expect(Object.values(names(join("a", "Build.xlsx"), join("b", "build.XLSX")))).toEqual(["Build (a).xlsx", "build (b).XLSX"]);
});

test("a file that is named twice gets one copy", () => {
  expect([...copyNames(["build.xlsx", resolve("build.xlsx")]).values()]).toEqual(["build.xlsx"]);
});

test("a name that another file has already, or has in other letters for the same, gets a number", () => {
  const [first, second] = [join("a", "x.xlsx"), join("b", "x.xlsx")];
  expect(names(first, second, "x (a).xlsx")).toEqual({ [first]: "x (a).xlsx", [second]: "x (b).xlsx", "x (a).xlsx": "x (a) [2].xlsx" });
  const [composed, apart] = ["b\u00fcgel.xlsx", "bu\u0308gel.xlsx"];
  expect(Object.values(names(composed, apart, "other.xlsx"))).toEqual([
    expect.stringMatching(/^b.*\.xlsx$/),
    expect.stringMatching(/ \[2\]\.xlsx$/),
    "other.xlsx",
  ]);
});
