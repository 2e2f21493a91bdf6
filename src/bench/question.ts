import { elements } from "./elements.ts";

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
