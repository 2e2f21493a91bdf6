/** The engine's own codes of errors as other sheets write them. */
const CODES: Readonly<Record<string, string>> = { "#ERROR": "#VALUE!", "#BAD_EXPR": "#VALUE!", "#REF": "#REF!", "#CYCLE": "#REF!" };

export const commonCode = (code: string): string => CODES[code] ?? code;
