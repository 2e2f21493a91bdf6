// ESLint runs only the rules for Office code, over the files that touch Office; format and everything else is Biome's.
import officeAddins from "eslint-plugin-office-addins";
import { parser } from "typescript-eslint";

const rules = Object.fromEntries(Object.keys(officeAddins.rules).map((rule) => [`office-addins/${rule}`, "error"]));

export default [
  {
    files: ["src/addin/**/*.ts", "src/hosts/excel/**/*.ts"],
    plugins: { "office-addins": officeAddins },
    languageOptions: { parser },
    rules,
  },
];
