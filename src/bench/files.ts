/** Ways to a person's files: through the browser's own dialogs where it has them (File System Access, wicg.github.io), otherwise as downloads. */

interface PickerOptions {
  suggestedName?: string;
  types: readonly { description: string; accept: Readonly<Record<string, readonly string[]>> }[];
}

declare global {
  interface Window {
    showOpenFilePicker?(options: PickerOptions): Promise<FileSystemFileHandle[]>;
    showSaveFilePicker?(options: PickerOptions): Promise<FileSystemFileHandle>;
  }
}

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const WORKBOOKS: PickerOptions = { types: [{ description: "Workbooks", accept: { [XLSX]: [".xlsx"] } }] };

/** Whether files can be opened and saved in place. */
export const hasPickers = (): boolean => window.showOpenFilePicker !== undefined && window.showSaveFilePicker !== undefined;

/** The file that the person chooses to be opened; nothing where they think better of it. */
export async function chosenFile(): Promise<FileSystemFileHandle | undefined> {
  return (await chosen(window.showOpenFilePicker!(WORKBOOKS)))?.[0];
}

/** Where the person wants a workbook to be put; the browser asks before that is over another file. */
export const chosenPlace = (suggestedName: string): Promise<FileSystemFileHandle | undefined> =>
  chosen(window.showSaveFilePicker!({ ...WORKBOOKS, suggestedName }));

async function chosen<T>(asking: Promise<T>): Promise<T | undefined> {
  try {
    return await asking;
  } catch (reason) {
    if ((reason as Error).name === "AbortError") return undefined;
    throw reason;
  }
}

/** Puts the bytes in the file's place once all of them are there: what is cut off half-way leaves the file as it was. */
export async function writeTo(file: FileSystemFileHandle, bytes: Uint8Array): Promise<void> {
  const writing = await file.createWritable();
  await writing.write(bytes as Uint8Array<ArrayBuffer>);
  await writing.close();
}

export function download(bytes: Uint8Array, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: XLSX }));
  link.download = name;
  link.click();
  // The browser has taken the bytes over by then.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
