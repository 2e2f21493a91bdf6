const SIGNS: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text as XML holds it, in an element or between double quotes; signs that XML cannot hold are the caller's. */
export const xmlText = (text: string): string => text.replace(/[&<>"]/g, (sign) => SIGNS[sign]!);
