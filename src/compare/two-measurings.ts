import type { Reading } from "./reading.ts";

/** Hours left until a limit is met, from the later measuring on. */
export interface Life {
  /** By the line through the measurings. */
  left: number;
  /** By the 95 % bound. */
  earliest: number;
}

type Measuring = Pick<Reading, "value" | "uncertainty">;

/** U of both sides, 0 for none. Where one side says nothing of its gauge, the other side's gauge stands for both. */
export const doubtsOf = (before: Measuring, after: Measuring): [number, number] => [
  before.uncertainty || after.uncertainty || 0,
  after.uncertainty || before.uncertainty || 0,
];

/**
 * Where the straight line through two measurings meets a limit, and the earliest at which it may.
 * With t counted from the first measuring in shares of the time between them, the line is
 * a·t + b·(1 − t) and its expanded uncertainty √(t²·Ua² + (1 − t)²·Ub²) (JCGM 100:2008, 5.1.2); the
 * earliest is the first t at which the line and its uncertainty together reach the limit, the smaller
 * root of (limit − line)² = uncertainty². Wants a change larger than its uncertainty, towards the limit.
 */
export function lifeFromTwo(before: Measuring, after: Measuring, limit: number, hours: number): Life {
  const [b, a] = [before.value!, after.value!];
  const [ub, ua] = doubtsOf(before, after);
  const step = a - b;
  const left = ((limit - a) / step) * hours;
  const lead = step ** 2 - ua ** 2 - ub ** 2;
  const middle = (limit - b) * step - ub ** 2;
  const rest = (limit - b) ** 2 - ub ** 2;
  const first = (middle - Math.sqrt(Math.max(middle ** 2 - lead * rest, 0))) / lead;
  // Inside the uncertainty of the later reading the limit may have been met already.
  const earliest = Math.abs(limit - a) <= ua ? 0 : (first - 1) * hours;
  return { left: Math.max(left, 0), earliest: Math.max(earliest, 0) };
}
