/** What a function declared by a test alone says of itself. */
export const about = { group: "about", summary: "", definition: "", source: "common practice", examples: [] } as const;
