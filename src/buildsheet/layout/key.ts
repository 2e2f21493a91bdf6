/** The key under which a workbook keeps a layout of its own; apart from the layouts, so that looking for one loads nothing else. */
export const LAYOUT_KEY = "layout";
