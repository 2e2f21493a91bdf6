/** What a function declared by a test alone says of itself. */
export const about = { group: "about", role: "assists", summary: "", definition: "", source: "common practice", examples: [] } as const;
