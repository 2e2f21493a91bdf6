import { dayOf, dayText } from "../../src/vocabulary/dates.ts";

/** A day of the sheet: 46102 is 2026-03-21, as `=DATE(2026,3,21)` says in any spreadsheet. */
const DAY = 46102;

// ECMA-376 part 1, 18.17.4.1: serial 1 is 1900-01-01; its example 39448 is 2008-01-01.
test("days are those of the sheet's calendar, with or without a time of day", () => {
  expect([dayOf(39448), dayText(39448), dayText(dayOf(DAY + 0.75)!)]).toEqual([39448, "2008-01-01", "2026-03-21"]);
});

test("days are read from text only where it can mean one day", () => {
  expect(["2026-03-21", " 2026-03-21 ", "21/03/2026", "03-21-2026", "2026-02-30", "soon"].map(dayOf)).toEqual([DAY, DAY, ...Array(4).fill(undefined)]);
});

test("days are not made of other numbers", () => {
  expect([12, 1500, 365, 150_000, null, true].map(dayOf)).toEqual(Array(6).fill(undefined));
});
