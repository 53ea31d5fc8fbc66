import { seededRandom, shuffle } from './seeded-random.ts';

/** One of the things compared: its group, and how early or late it was. */
export interface Scored {
  readonly group: string;
  readonly score: number;
}

/** How often to deal, at most; fewer where so many things are compared that it would take more than `mostSteps`; the seed. */
export interface Dealing {
  readonly rounds: number;
  readonly mostSteps: number;
  readonly seed: number;
}

/**
 * The chance of groups as unlike as these if the labels of the groups were dealt out anew, within each stratum: it holds for
 * groups of any size, where chi-square needs large ones. Groups are unlike by the squares of their summed scores, each over its
 * variance. `null` where nothing differs: one group, or all scores of a stratum alike. The same input gives the same chance.
 * Source: permutation tests by drawn orders, Davison and Hinkley, Bootstrap Methods and their Application (1997), section 4.3
 * (from memory): the deal seen counts as one of them.
 */
export function dealtChance(strata: readonly (readonly Scored[])[], dealing: Dealing): number | null {
  const names = [...new Set(strata.flat().map(({ group }) => group))];
  const dealt = strata.map((stratum) => ({
    scores: Float64Array.from(centred(stratum.map(({ score }) => score))),
    labels: Int32Array.from(stratum, ({ group }) => names.indexOf(group)),
  }));
  const weights = weightsOf(dealt, names.length);
  if (weights.every((weight) => weight === 0)) return null;
  const count = strata.reduce((sum, { length }) => sum + length, 0);
  const rounds = Math.min(dealing.rounds, Math.max(99, Math.ceil(dealing.mostSteps / count)));
  const next = seededRandom(dealing.seed);
  const seen = unlikeness(dealt, weights);
  let atLeast = 1;
  for (let round = 0; round < rounds; round += 1) {
    for (const { scores } of dealt) shuffle(scores, next);
    // What differs by rounding only is as unlike as what was seen.
    if (unlikeness(dealt, weights) >= seen * (1 - 1e-9)) atLeast += 1;
  }
  return atLeast / (rounds + 1);
}

interface Dealt {
  readonly scores: Float64Array;
  readonly labels: Int32Array;
}

function centred(scores: readonly number[]): readonly number[] {
  const mean = scores.reduce((sum, score) => sum + score, 0) / Math.max(1, scores.length);
  return scores.map((score) => score - mean);
}

/** One over the variance of each group's sum when labels are dealt; 0 where it can not vary. */
function weightsOf(strata: readonly Dealt[], groups: number): Float64Array {
  const variances = new Float64Array(groups);
  for (const { scores, labels } of strata) {
    const all = scores.length;
    const spread = scores.reduce((sum, score) => sum + score ** 2, 0) / Math.max(1, all - 1);
    const counts = new Float64Array(groups);
    for (const label of labels) counts[label] = (counts[label] ?? 0) + 1;
    for (const [group, count] of counts.entries())
      variances[group] = (variances[group] ?? 0) + (spread * count * (all - count)) / Math.max(1, all);
  }
  return variances.map((variance) => (variance > 1e-12 ? 1 / variance : 0));
}

function unlikeness(strata: readonly Dealt[], weights: Float64Array): number {
  const sums = new Float64Array(weights.length);
  for (const { scores, labels } of strata)
    for (let index = 0; index < labels.length; index += 1) {
      const label = labels[index] ?? 0;
      sums[label] = (sums[label] ?? 0) + (scores[index] ?? 0);
    }
  return sums.reduce((total, sum, group) => total + sum ** 2 * (weights[group] ?? 0), 0);
}
