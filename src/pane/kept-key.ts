/** The key under which a workbook keeps what people typed and chose in the pane; apart, for whoever needs the key alone. */
export const PANE_KEY = "pane";
