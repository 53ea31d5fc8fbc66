import { indexFrom, seededRandom } from './seeded-random.ts';

/** The score of one of the things compared, and its group. */
export interface Scored {
  readonly group: string;
  readonly score: number;
}

/**
 * Chance of groups whose sums of scores lie as far apart as these, or farther, if the groups were dealt out at random: the share of
 * `rounds` deals, this one counted among them. It holds for groups of any size, where the chi-square of the same sums needs
 * large ones; the scores must add up to 0. Sources: Fay and Shaw, Exact and Asymptotic Weighted Logrank Tests for Interval
 * Censored Data, Journal of Statistical Software 36 (2010); Phipson and Smyth, Statistical Applications in Genetics and
 * Molecular Biology 9 (2010), for the deal that is counted (both from memory).
 */
export function permutationChance(
  scored: readonly Scored[],
  { seed, rounds }: { readonly seed: number; readonly rounds: number },
): number {
  const names = [...new Set(scored.map(({ group }) => group))];
  const sizes = names
    .map((name) => scored.filter(({ group }) => group === name).length)
    .sort((a, b) => a - b);
  const seen = apart(
    names.map((name) => scored.filter(({ group }) => group === name)).map((own) => [sumOf(own), own.length]),
  );
  const next = seededRandom(seed);
  const deck = scored.map(({ score }) => score);
  let asFar = 1;
  for (let round = 1; round < rounds; round += 1)
    if (apart(deal(deck, sizes, next)) >= seen * (1 - rounding)) asFar += 1;
  return asFar / Math.max(1, rounds);
}

const rounding = 1e-9;

function sumOf(scored: readonly Scored[]): number {
  return scored.reduce((sum, { score }) => sum + score, 0);
}

/** How far sums lie apart, each with the number it is of: the chi-square of the scores, but for a factor. */
function apart(sums: readonly (readonly [number, number])[]): number {
  return sums.reduce((all, [sum, count]) => all + sum ** 2 / count, 0);
}

/** Deals hands of these sizes off a deck, which it mixes; the last hand is what is left, so that its cards need not be drawn. */
function deal(
  deck: number[],
  sizes: readonly number[],
  next: () => number,
): readonly (readonly [number, number])[] {
  let [place, dealt] = [0, 0];
  return sizes.map((size, hand) => {
    if (hand === sizes.length - 1) return [-dealt, size];
    let sum = 0;
    for (const end = place + size; place < end; place += 1) {
      const from = place + indexFrom(next(), deck.length - place);
      const card = deck[from] ?? 0;
      deck[from] = deck[place] ?? 0;
      deck[place] = card;
      sum += card;
    }
    dealt += sum;
    return [sum, size];
  });
}
