import { type Crossed, chanceOf, crossedAnova, oneWayAnova, source } from "../../math/anova.ts";

/** Variances that the readings of a gauge study are made of. */
export interface Components {
  repeatability: number;
  /** Between operators, with what is left of the interaction; undefined for one operator. */
  reproducibility: number | undefined;
  parts: number;
  interactionChance: number | undefined;
  isPooled: boolean;
}

/** An interaction that chance alone makes at least as often as this is no interaction. */
const POOLED_FROM = 0.05;

/** Of `cells[part][operator]`, each with as many repeats. */
export function gaugeComponents(cells: readonly (readonly (readonly number[])[])[]): Components {
  const operators = cells[0]!.length;
  const repeats = cells[0]![0]!.length;
  if (operators > 1) return crossedComponents(crossedAnova(cells), cells.length, operators, repeats);
  const { between, within } = oneWayAnova(cells.flat());
  return {
    repeatability: within.mean,
    reproducibility: undefined,
    parts: share(between.mean - within.mean, repeats),
    interactionChance: undefined,
    isPooled: false,
  };
}

/** Components from mean squares by their expectations with random parts and operators. */
export function crossedComponents(anova: Crossed, parts: number, operators: number, repeats: number): Components {
  const chance = chanceOf(anova.interaction, anova.repeats);
  const isPooled = chance >= POOLED_FROM;
  const pooled = source(anova.interaction.squares + anova.repeats.squares, anova.interaction.freedom + anova.repeats.freedom);
  const within = isPooled ? pooled : anova.repeats;
  // What parts and operators are held against: the interaction, or what it was pooled into.
  const beside = isPooled ? pooled : anova.interaction;
  return {
    repeatability: within.mean,
    reproducibility: share(anova.operators.mean - beside.mean, parts * repeats) + share(beside.mean - within.mean, repeats),
    parts: share(anova.parts.mean - beside.mean, operators * repeats),
    interactionChance: chance,
    isPooled,
  };
}

/** A variance cannot be below nothing, but its estimate can. */
const share = (difference: number, count: number): number => Math.max(0, difference) / count;
