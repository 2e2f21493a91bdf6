/** What a line of headings can tell about the numbers beside it. */
export const TELLS = ["engine", "cylinder", "characteristic", "height", "axis", "position", "role", "unit"] as const;
export type Tell = (typeof TELLS)[number];

/** What a number in a range is. */
export const ROLES = ["value", "lower", "upper", "unit", "uncertainty", "near"] as const;
export type Role = (typeof ROLES)[number];
