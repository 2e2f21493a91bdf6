/** The parts of the bench's page, by the ids in index.html. */
function part<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`The page has no ${id}`);
  return found;
}

export const elements = {
  book: part("book", HTMLButtonElement),
  unsaved: part("unsaved", HTMLSpanElement),
  fresh: part("new", HTMLButtonElement),
  open: part("open", HTMLButtonElement),
  file: part("file", HTMLInputElement),
  save: part("save", HTMLButtonElement),
  saveAs: part("save-as", HTMLButtonElement),
  sample: part("sample", HTMLButtonElement),
  paneToggle: part("pane-toggle", HTMLButtonElement),
  start: part("start", HTMLElement),
  startNew: part("start-new", HTMLButtonElement),
  startOpen: part("start-open", HTMLButtonElement),
  startSample: part("start-sample", HTMLButtonElement),
  message: part("message", HTMLDivElement),
  messageText: part("message-text", HTMLParagraphElement),
  messageClose: part("message-close", HTMLButtonElement),
  grid: part("grid", HTMLDivElement),
  pane: part("pane", HTMLIFrameElement),
  drop: part("drop", HTMLParagraphElement),
  question: part("question", HTMLDialogElement),
  questionText: part("question-text", HTMLParagraphElement),
  answerName: part("answer-name", HTMLInputElement),
  answers: part("answers", HTMLDivElement),
};

/** Asks in the page and waits for the answer; closing the question with Escape answers with the last. */
export function ask<const A extends string>(text: string, answers: Readonly<Record<A, string>>): Promise<A> {
  const { question, questionText, answers: place } = elements;
  const values = Object.keys(answers) as A[];
  questionText.textContent = text;
  place.replaceChildren(
    ...values.map((value, i) => {
      const button = document.createElement("button");
      button.value = value;
      button.textContent = answers[value];
      button.className = i === 0 ? "bench-button bench-first" : "bench-button";
      return button;
    }),
  );
  question.returnValue = values.at(-1)!;
  question.showModal();
  return new Promise((resolve) => {
    question.addEventListener("close", () => resolve((values as string[]).includes(question.returnValue) ? (question.returnValue as A) : values.at(-1)!), {
      once: true,
    });
  });
}

/** Asks for a name; nothing where the question is closed without one. */
export async function askName(text: string, name: string): Promise<string | undefined> {
  const { answerName } = elements;
  answerName.value = name;
  answerName.hidden = false;
  const answer = ask(text, { take: "Rename", leave: "Leave it" });
  answerName.select();
  const taken = (await answer) === "take";
  answerName.hidden = true;
  return taken ? answerName.value : undefined;
}
