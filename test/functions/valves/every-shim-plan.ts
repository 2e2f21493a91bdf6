/** A shim problem in whole hundredths. */
export interface ShimProblem {
  installed: number[];
  clearance: number[];
  least: number[];
  most: number[];
  spares: number[];
  step: number;
}

interface Option {
  /** Place among all shims: those installed, then the spares, then the one to buy; `undefined` for none. */
  place: number;
  size: number | undefined;
  from: string;
}

/** The best plan by trying every one in which each valve inside its limits keeps its shim, as rows of sizes in whole units: fewest unset, fewest bought, nearest the middle, fewest moved, earliest shim. */
export function bestPlan(given: ShimProblem): (string | number)[][] {
  const { installed, clearance, least, most, spares, step } = given;
  const left = (valve: number, size: number) => installed[valve]! + clearance[valve]! - size;
  const off = (valve: number, size: number) => Math.abs(2 * left(valve, size) - least[valve]! - most[valve]!);
  const fits = (valve: number, size: number) => left(valve, size) >= least[valve]! && left(valve, size) <= most[valve]!;
  const options = installed.map((_, valve): Option[] => {
    const others = installed.map((size, at) => ({ place: at, size, from: at === valve ? "its own" : `valve ${at + 1}` }));
    const loose = spares.map((size, at) => ({ place: installed.length + at, size, from: `spare ${at + 1}` }));
    if (fits(valve, installed[valve]!)) return [others[valve]!];
    let bought: number | undefined;
    for (let size = step; size < 600; size += step) if (fits(valve, size) && (bought === undefined || off(valve, size) < off(valve, bought))) bought = size;
    const last = { place: installed.length + spares.length + valve, size: bought, from: bought === undefined ? "none" : "buy" };
    return [...[...others, ...loose].filter(({ size }) => fits(valve, size)), last];
  });
  let best: { chosen: Option[]; keys: number[] } | undefined;
  const choose = (valve: number, chosen: Option[]) => {
    if (valve < installed.length) {
      for (const option of options[valve]!) if (!chosen.some(({ place }) => place === option.place)) choose(valve + 1, [...chosen, option]);
      return;
    }
    const count = (from: string) => chosen.filter((option) => option.from === from).length;
    const distance = chosen.reduce((sum, { size }, at) => sum + (size === undefined ? 0 : off(at, size)), 0);
    const moved = chosen.length - count("its own");
    const keys = [count("none"), count("buy"), distance, moved, ...chosen.map(({ place }) => place)];
    const at = best ? keys.findIndex((key, i) => key !== best!.keys[i]) : 0;
    if (!best || (at >= 0 && keys[at]! < best.keys[at]!)) best = { chosen, keys };
  };
  choose(0, []);
  const none = `none: no multiple of ${step / 100} lands in the limits`;
  return best!.chosen.map(({ size, from }, at) => (size === undefined ? [at + 1, none, "", ""] : [at + 1, size / 100, from, left(at, size) / 100]));
}
