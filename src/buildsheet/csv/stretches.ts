import type { Stretch } from "./segment.ts";

/** What the next one must begin with. */
interface Read {
  start: number;
  end: number;
  broken?: object;
}

/**
 * Stretches of a file read some ahead of their turn and given in their order. All but the first begin at
 * a guess: a line break may stand in quotes. A guess is right when the stretch before ends where it
 * began, as what follows depends on nothing else; one that is not is read again from the right place.
 */
export async function* inOrder<T extends Read>(
  { from, to, size, ahead }: { from: number; to: number; size: number; ahead: number },
  read: (stretch: Stretch) => Promise<T | undefined>,
): AsyncGenerator<T> {
  const started: Promise<T | undefined>[] = [];
  const stretchAt = (i: number): Stretch => ({ from: from + i * size, to: Math.min(to, from + (i + 1) * size), isGuess: i > 0 });
  const count = Math.ceil((to - from) / size);
  let place = from;
  for (let i = 0; i < count; i++) {
    while (started.length < Math.min(count, i + ahead)) started.push(settled(read(stretchAt(started.length))));
    const stretch = stretchAt(i);
    const guessed = await started[i];
    // A record of the stretch before may reach across this one.
    if (place >= stretch.to) continue;
    const right = guessed?.start === place ? guessed : await read({ from: place, to: stretch.to, isGuess: false });
    if (!right) throw new Error("a stretch of the file has no end");
    place = right.end;
    yield right;
    delete started[i];
    if (right.broken !== undefined) return;
  }
}

/** Told of where it is waited for: until then nobody is there to take a failure. */
function settled<T>(work: Promise<T>): Promise<T> {
  work.catch(() => {});
  return work;
}
