const MOST_KNOWN = 10_000;

/** A function of a text that remembers what it has answered: in sheets and files the same words come again and again. */
export function remembered<Answer>(answer: (text: string) => Answer): (text: string) => Answer {
  const known = new Map<string, Answer>();
  return (text) => {
    const earlier = known.get(text);
    if (earlier !== undefined) return earlier;
    const found = answer(text);
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(text, found);
    return found;
  };
}
