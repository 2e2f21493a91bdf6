import {
  declared,
  type Given,
  type GridCell,
  type GridParts,
  givenCells,
  gridBlock,
  isError,
  notHere,
  type OwnFunction,
  Reader,
  SheetFault,
} from "./own-function.ts";

interface Moments {
  n: number;
  meanX: number;
  meanY: number;
  xx: number;
  yy: number;
  xy: number;
}

const mean = (values: readonly number[]): number => {
  const first = values.reduce((total, value) => total + value, 0) / values.length;
  // What is left over by rounding, put right by a second pass.
  return first + values.reduce((total, value) => total + (value - first), 0) / values.length;
};

/** Sum of the squared distances from the mean: never as a difference of large sums, in which readings near 1,000 lose their digits. */
function squaresAbout(values: readonly number[]): number {
  const centre = mean(values);
  return values.reduce((total, value) => total + (value - centre) ** 2, 0);
}

function variance(values: readonly number[], lost: number): number {
  if (values.length <= lost) throw new SheetFault("#DIV/0!", `At least ${lost + 1} numbers are wanted.`);
  return squaresAbout(values) / (values.length - lost);
}

function momentsOf(x: readonly number[], y: readonly number[]): Moments {
  const [meanX, meanY] = [mean(x), mean(y)];
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    const [dx, dy] = [x[i]! - meanX, y[i]! - meanY];
    xx += dx * dx;
    yy += dy * dy;
    xy += dx * dy;
  }
  return { n: x.length, meanX, meanY, xx, yy, xy };
}

const divided = (top: number, bottom: number): number => {
  if (bottom === 0) throw new SheetFault("#DIV/0!", "All these numbers are the same, or there are too few of them.");
  return top / bottom;
};

/** Beyond rounding no two series are more alike than fully. */
const share = (value: number): number => Math.max(-1, Math.min(1, value));

/** The error that stands among values; which of several kinds comes out is not worked out. */
function onlyError(cells: readonly (GridCell | undefined)[]): GridCell | SheetFault {
  const errors = cells.filter((cell) => isError(cell?.value)) as GridCell[];
  const isOne = errors.every(({ value }) => value === errors[0]!.value);
  return isOne ? errors[0]! : new SheetFault("#VALUE!", notHere("Several kinds of errors stand in these ranges: which of them comes out is not told here."));
}

/** Functions of scatter and of straight lines from centred sums, and such as the grid lacks. Checked against LibreOffice: test/reference/formulas. */
export function statisticFunctions(grid: GridParts): Record<string, OwnFunction> {
  const reader = new Reader(grid.helpers);
  const { helpers } = grid;

  /** The pairs of which both are numbers. */
  function pairsOf(a: Given, b: Given): [number[], number[]] {
    const [left, right] = [gridBlock(a), gridBlock(b)];
    const height = left[0]?.length ?? 0;
    if (left.length * height !== right.length * (right[0]?.length ?? 0)) throw new SheetFault("#N/A", "The two ranges are not of the same size.");
    const [cellsA, cellsB] = [[...givenCells(left)], [...givenCells(right)]];
    const found: [number[], number[]] = [[], []];
    for (const [i, one] of cellsA.entries()) {
      const other = cellsB[i];
      if (isError(one?.value) || isError(other?.value)) throw onlyError([...cellsA, ...cellsB]);
      if (typeof one?.value !== "number" || typeof other?.value !== "number") continue;
      found[0].push(one.value);
      found[1].push(other.value);
    }
    if (found[0].length === 0) throw new SheetFault("#DIV/0!", "There is no pair of numbers in these ranges.");
    return found;
  }

  const scatter = (description: string, of: (values: number[]) => number): OwnFunction =>
    declared(helpers, description, ["value (number, range<number>, repeating)"], function (...args) {
      return of(reader.numbers(args, this));
    });
  const pairs = (description: string, of: (moments: Moments) => number): OwnFunction =>
    declared(helpers, description, ["data_y (range<number>)", "data_x (range<number>)"], (y, x) => {
      const [ys, xs] = pairsOf(y, x);
      return of(momentsOf(xs, ys));
    });
  const [sample, population] = [1, 0];
  const deviation = (lost: number) => scatter("Standard deviation of numbers", (values) => Math.sqrt(variance(values, lost)));
  const spread = (lost: number) => scatter("Variance of numbers", (values) => variance(values, lost));
  const squares = (description: string, of: (x: number, y: number) => number): OwnFunction =>
    declared(helpers, description, ["array_x (number, range<number>)", "array_y (number, range<number>)"], (x, y) => {
      const [xs, ys] = pairsOf(x, y);
      return xs.reduce((total, value, i) => total + of(value, ys[i]!), 0);
    });
  const correlation = ({ xx, yy, xy }: Moments): number => share(divided(xy, Math.sqrt(xx) * Math.sqrt(yy)));
  const covariance = (lost: number) => pairs("Covariance of two series", ({ xy, n }) => divided(xy, n - lost));
  const forecast = declared(
    helpers,
    "Value of the straight line through pairs of numbers",
    ["x (number)", "data_y (range<number>)", "data_x (range<number>)"],
    function (at, y, x) {
      const wanted = reader.number(at, this);
      const [ys, xs] = pairsOf(y, x);
      const { meanX, meanY, xx, xy } = momentsOf(xs, ys);
      return meanY + divided(xy, xx) * (wanted - meanX);
    },
  );
  const some = (values: readonly number[], code = "#NUM!"): void => {
    if (values.length === 0) throw new SheetFault(code, "There is no number among these values.");
  };
  const positive = (values: readonly number[]): void => {
    some(values);
    if (values.some((value) => value <= 0)) throw new SheetFault("#NUM!", "All numbers have to be above 0.");
  };
  const mode = scatter("The number that comes up most often", (values) => {
    const times = new Map<number, number>();
    for (const value of values) times.set(value, (times.get(value) ?? 0) + 1);
    const most = Math.max(0, ...times.values());
    if (most < 2) throw new SheetFault("#N/A", "No number comes up twice.");
    return [...times].find(([, count]) => count === most)![0];
  });

  /** `shared` tells the place of as many as share it, counted from that of the first. */
  const rank = (description: string, shared: (alike: number) => number): OwnFunction =>
    declared(helpers, description, ["value (number)", "values (any, range<number>)", "is_ascending (boolean, optional)"], function (given, among, ascending) {
      const value = reader.number(given, this);
      if (!Array.isArray(among) && isError(among?.value)) throw among;
      const values = reader.numbers([gridBlock(among)], this);
      const alike = values.filter((other) => other === value).length;
      if (alike === 0) throw new SheetFault("#N/A", "The number is not among the others.");
      const up = reader.flag(ascending, this, false);
      return values.filter((other) => (up ? other < value : other > value)).length + shared(alike);
    });
  const rankOfFirst = rank("Place of a number among others, that of the first where several share it", () => 1);

  return {
    AVEDEV: scatter("Mean distance of numbers from their mean", (values) => {
      some(values);
      const middle = mean(values);
      return mean(values.map((value) => Math.abs(value - middle)));
    }),
    "STDEV.S": deviation(sample),
    STDEV: deviation(sample),
    "STDEV.P": deviation(population),
    STDEVP: deviation(population),
    "VAR.S": spread(sample),
    VAR: spread(sample),
    "VAR.P": spread(population),
    VARP: spread(population),
    DEVSQ: scatter("Sum of squared distances from the mean", (values) => {
      some(values);
      return squaresAbout(values);
    }),
    CORREL: pairs("How far two series go together", correlation),
    PEARSON: pairs("How far two series go together", correlation),
    RSQ: pairs("Square of the correlation of two series", (moments) => correlation(moments) ** 2),
    SLOPE: pairs("Slope of the straight line through pairs of numbers", ({ xy, xx }) => divided(xy, xx)),
    INTERCEPT: pairs("Where the straight line through pairs of numbers meets x = 0", ({ xy, xx, meanX, meanY }) => meanY - divided(xy, xx) * meanX),
    STEYX: pairs("Standard error of the straight line through pairs of numbers", ({ xx, yy, xy, n }) => {
      if (n < 3) throw new SheetFault("#DIV/0!", "At least 3 pairs of numbers are wanted.");
      return Math.sqrt(Math.max(0, yy - divided(xy * xy, xx)) / (n - 2));
    }),
    COVAR: covariance(population),
    "COVARIANCE.P": covariance(population),
    "COVARIANCE.S": covariance(sample),
    FORECAST: forecast,
    "FORECAST.LINEAR": forecast,
    MODE: {
      ...mode,
      compute(...args) {
        // By Excel's values in a public test workbook (apache/poi, FormulaEvalTestData_Copy.xlsx); MODE.SNGL takes both.
        const first = args.map((given) => [...givenCells(given)]).find((cells) => cells.length === 1 && typeof cells[0]?.value !== "number");
        if (first && typeof first[0]?.value !== "boolean")
          return isError(first[0]?.value) ? first[0] : new SheetFault("#VALUE!", "MODE takes no text and no blank cell alone.");
        return mode.compute.apply(this, args);
      },
    },
    "MODE.SNGL": mode,
    SUMSQ: scatter("Sum of the squares of numbers", (values) => values.reduce((total, value) => total + value * value, 0)),
    SUMX2MY2: squares("Sum of the differences of squares of two series", (x, y) => x * x - y * y),
    SUMX2PY2: squares("Sum of the sums of squares of two series", (x, y) => x * x + y * y),
    SUMXMY2: squares("Sum of the squared differences of two series", (x, y) => (x - y) ** 2),
    GEOMEAN: scatter("Geometric mean of numbers", (values) => {
      positive(values);
      return Math.exp(mean(values.map(Math.log)));
    }),
    HARMEAN: scatter("Harmonic mean of numbers", (values) => {
      positive(values);
      return 1 / mean(values.map((value) => 1 / value));
    }),
    TRIMMEAN: declared(
      helpers,
      "Mean without a share of the largest and smallest numbers",
      ["values (range<number>)", "share (number)"],
      function (given, share) {
        const values = reader.numbers([given], this).sort((a, b) => a - b);
        const part = reader.number(share, this);
        some(values);
        if (part < 0 || part >= 1) throw new SheetFault("#NUM!", "The share has to be at least 0 and less than 1.");
        const off = Math.floor((part * values.length) / 2);
        return mean(values.slice(off, values.length - off));
      },
    ),
    RANK: rankOfFirst,
    "RANK.EQ": rankOfFirst,
    "RANK.AVG": rank("Place of a number among others, the mean where several share it", (alike) => (alike + 1) / 2),
  };
}
