/** What lists and marks findings. It knows every kind of them, and is loaded with the first check. */
export { marksOf } from "../../check/finding-words.ts";
export { CheckFindings } from "./check-findings.tsx";
