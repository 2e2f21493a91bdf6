import { z } from "zod";

/**
 * The format of functions.json as Microsoft's reference lists it: "Manually create JSON metadata for
 * custom functions", section "Metadata reference" (learn.microsoft.com/office/dev/add-ins/excel/
 * custom-functions-json), and the lengths and letters of "Custom functions naming and localization".
 * Strict, so that a property nobody documents is found.
 */
const parameter = z.strictObject({
  name: z.string().min(1),
  description: z.string().optional(),
  type: z.enum(["boolean", "number", "string", "any"]).optional(),
  dimensionality: z.enum(["scalar", "matrix"]).optional(),
  optional: z.boolean().optional(),
  repeating: z.boolean().optional(),
});

const listed = z.strictObject({
  // "This ID can only contain alphanumeric characters and periods."
  id: z.string().regex(/^[A-Za-z0-9.]+$/),
  name: z
    .string()
    .regex(/^\p{L}[\p{L}\d._]*$/u)
    .max(128),
  description: z.string().optional(),
  helpUrl: z.url().optional(),
  parameters: z.array(parameter),
  result: z.strictObject({ type: z.enum(["boolean", "number", "string", "any"]).optional(), dimensionality: z.enum(["scalar", "matrix"]).optional() }),
  options: z.strictObject({ cancelable: z.boolean(), requiresAddress: z.boolean(), stream: z.boolean(), volatile: z.boolean() }).partial().optional(),
});

export const metadataFormat = z.strictObject({
  allowCustomDataForDataTypeAny: z.boolean().optional(),
  // "A top-level property … contains no sub-properties"; holds for params of type any and any[][].
  allowErrorForDataTypeAny: z.boolean().optional(),
  functions: z.array(listed).min(1),
});
