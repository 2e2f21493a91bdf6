/** Memory of the pages after their garbage was collected, at one moment. */
export interface Moment {
  edits: number;
  checks: number;
  megabytes: number;
  nodes: number;
  listeners: number;
}

/** What a long use came to. */
export interface LongUse {
  edits: number;
  checks: number;
  series: Moment[];
  /** Growth of memory from the second half of the first moments to the last ones, in MB for a thousand edits. */
  growth: number;
  large: { workbook: string; opened: number; checked: number; scrolled: number; megabytes: number }[];
}

/** The slope of a line through the moments (least squares), without the first ones, in which the engine fills what it keeps anyway. */
export function growthOf(series: readonly Moment[]): number {
  const settled = series.slice(Math.ceil(series.length / 4));
  if (settled.length < 2) return 0;
  const mean = (of: (moment: Moment) => number): number => settled.reduce((sum, moment) => sum + of(moment), 0) / settled.length;
  const [x, y] = [mean(({ edits }) => edits), mean(({ megabytes }) => megabytes)];
  const spread = settled.reduce((sum, { edits }) => sum + (edits - x) ** 2, 0);
  const slope = settled.reduce((sum, { edits, megabytes }) => sum + (edits - x) * (megabytes - y), 0) / spread;
  return Math.round(slope * 1000 * 1000) / 1000;
}
