/**
 * Uncertainty of what is worked out from readings, by the law of propagation: U² is the sum of the squares of what each
 * reading's U moves the result by. Source: JCGM 100:2008 (GUM), 5.1.2, derivatives by differences (5.1.3, note 2):
 * Z = ½ [f(x + u) − f(x − u)], u = U ÷ 2. All readings count as independent.
 *
 * A largest or smallest reading has no such derivative where others are as large: there the readings count that decide,
 * as if they lay a little apart. Where others are nearly as large the larger counts, Z or the slope at the reading: the
 * scatter of a largest of several is never more than that of the one which decides (simulated in the tests).
 */
export type WorkedOut = (values: readonly number[]) => readonly number[] | undefined;

const COVERAGE_FACTOR = 2;
/** Less of one way's change than this of the other way's is looked at closely. */
const LEAST_SHARE = 0.9;
/** How far equal readings are laid apart and then moved, in u: far more than the nine places that results are rounded to. */
const APART = 0.2;
const FURTHER_APART = 0.05;
const STEP = 0.002;

/** Expanded uncertainty (k = 2) of each result; NaN for one that is no number, nothing where a moved reading is refused. */
export function propagated(values: readonly number[], uncertainties: readonly number[], work: WorkedOut): number[] | undefined {
  const results = work(values);
  const squares = results?.map(() => 0);
  /** For each result the readings that are one of several equal ones. */
  const equals = results?.map(() => new Set<number>());
  if (!results || !squares || !equals) return undefined;
  for (const [i, uncertainty] of uncertainties.entries()) {
    if (uncertainty === 0) continue;
    const changes = changesBy(values, i, uncertainty / COVERAGE_FACTOR, results, work);
    if (!changes) return undefined;
    for (const [r, change] of changes.entries()) {
      if (change === "equal") equals[r]!.add(i);
      else squares[r]! += change ** 2;
    }
  }
  const tied = new Set(equals.flatMap((set) => [...set]));
  const apart = values.map((value, i) => (tied.has(i) ? value + (uncertainties[i]! / COVERAGE_FACTOR) * offsetOf(i) : value));
  for (const i of tied) {
    const slopes = slopesAt(apart, i, uncertainties[i]! / COVERAGE_FACTOR, work(apart), work);
    if (!slopes) return undefined;
    for (const [r, set] of equals.entries()) if (set.has(i)) squares[r]! += ((slopes[r]!.up + slopes[r]!.down) / 2) ** 2;
  }
  return squares.map((square) => COVERAGE_FACTOR * Math.sqrt(square));
}

/** What one reading's u moves each result by. */
function changesBy(values: readonly number[], at: number, u: number, results: readonly number[], work: WorkedOut): (number | "equal")[] | undefined {
  const [up, down] = [u, -u].map((by) => work(moved(values, at, by)));
  if (!up || !down) return undefined;
  const isStraight = results.map((result, r) => isOneSlope(up[r]! - result, result - down[r]!));
  const slopes = isStraight.includes(false) ? slopesAt(values, at, u, results, work) : [];
  if (!slopes) return undefined;
  return results.map((_, r) => {
    const half = Math.abs(up[r]! - down[r]!) / 2;
    if (isStraight[r]) return half;
    const { up: rising, down: falling } = slopes[r]!;
    return isOneSlope(rising, falling) ? Math.max(half, Math.abs(rising + falling) / 2) : "equal";
  });
}

/** What u would move each result by, going on as the results begin to change on either side. */
function slopesAt(values: readonly number[], at: number, u: number, results: readonly number[] | undefined, work: WorkedOut) {
  const [up, down] = [STEP * u, -STEP * u].map((by) => work(moved(values, at, by)));
  return results && up && down && results.map((result, r) => ({ up: (up[r]! - result) / STEP, down: (result - down[r]!) / STEP }));
}

const moved = (values: readonly number[], at: number, by: number): number[] => values.map((value, i) => (i === at ? value + by : value));

/** NaN goes into the sum, so that the result has no uncertainty either. */
const isOneSlope = (up: number, down: number): boolean =>
  Number.isNaN(up + down) || (up * down >= 0 && Math.min(Math.abs(up), Math.abs(down)) >= LEAST_SHARE * Math.max(Math.abs(up), Math.abs(down)));

/** Neither two offsets nor two differences of offsets are alike: multiples of irrational numbers, and of squares. */
const offsetOf = (i: number): number => APART * fraction(i * 0.618033988749895) + FURTHER_APART * fraction(i * i * Math.SQRT2);

const fraction = (value: number): number => value - Math.floor(value);
