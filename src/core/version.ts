// Made by `npm run generate` from package.json.
export const VERSION = "0.1.0";
