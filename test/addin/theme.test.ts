import { themeFor } from "../../src/addin/theme.ts";

// Grounds of Office's four themes, from memory of Excel for Windows and for the Mac.
test.each([
  ["#FFFFFF", "white"],
  ["#E6E6E6", "colorful"],
  ["#F3F2F1", "colorful"],
  ["#666666", "dark-gray"],
  ["#262626", "black"],
  ["#000000", "black"],
])("a pane's ground of %s goes with the theme %s", (ground, theme) => {
  expect(themeFor(ground)).toBe(theme);
});

test("without a ground the pane follows the system", () => {
  expect(themeFor(undefined)).toBeUndefined();
  expect(themeFor("window")).toBeUndefined();
});

test("a colour with transparency behind it is read by its first three parts", () => {
  expect(themeFor("#262626FF")).toBe("black");
});
