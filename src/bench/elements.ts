/** The parts of the bench's page, by the ids in index.html. */
function part<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`The page has no ${id}`);
  return found;
}

export const elements = {
  book: part("book", HTMLSpanElement),
  unsaved: part("unsaved", HTMLSpanElement),
  file: part("file", HTMLInputElement),
  save: part("save", HTMLButtonElement),
  sample: part("sample", HTMLButtonElement),
  paneToggle: part("pane-toggle", HTMLButtonElement),
  message: part("message", HTMLDivElement),
  messageText: part("message-text", HTMLParagraphElement),
  messageClose: part("message-close", HTMLButtonElement),
  grid: part("grid", HTMLDivElement),
  pane: part("pane", HTMLIFrameElement),
  drop: part("drop", HTMLParagraphElement),
  question: part("question", HTMLDialogElement),
  questionText: part("question-text", HTMLParagraphElement),
  answers: part("answers", HTMLDivElement),
};
