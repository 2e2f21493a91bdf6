/** Gives the least of its members first. */
export class Heap<T> {
  readonly #members: T[] = [];

  constructor(readonly compare: (a: T, b: T) => number) {}

  add(member: T): void {
    const members = this.#members;
    let place = members.length;
    members.push(member);
    while (place > 0) {
      const above = (place - 1) >> 1;
      if (this.compare(members[above]!, member) <= 0) break;
      members[place] = members[above]!;
      place = above;
    }
    members[place] = member;
  }

  take(): T | undefined {
    const members = this.#members;
    const first = members[0];
    const last = members.pop();
    if (first === undefined || members.length === 0) return first;
    let place = 0;
    for (;;) {
      let below = 2 * place + 1;
      if (below >= members.length) break;
      if (below + 1 < members.length && this.compare(members[below + 1]!, members[below]!) < 0) below++;
      if (this.compare(last!, members[below]!) <= 0) break;
      members[place] = members[below]!;
      place = below;
    }
    members[place] = last!;
    return first;
  }
}
