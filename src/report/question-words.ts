import type { Finding } from '../vocabulary.ts';

/** How drifts of sync times were found. */
export const driftWords =
  'Counted are sync times that are known to the second, in the order of their starts, of groups with 20 or more. The line is their exponentially weighted moving average, weight 0.1 (NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4, 2012). Usual is the mean of the first half. The limits are so wide that, with the same times in any other order, a line of any group leaves them in at most 1 of 100 fleets (permutation test; Davison and Hinkley, Bootstrap Methods and their Application, section 4.3, 1997). Pairs that differ and were worked on one after the other would look like a drift.';

/** How each kind of finding that rests on chance was found; only what is needed, each kind once. */
const words: readonly (readonly [Finding['id'], string])[] = [
  [
    'coincidence',
    'Coincidence: counted are losses with a change in the 30 s before them, against the same changes anywhere else in the ten minutes before each loss (five, where several lie in those), as far as the pair was ready and observed in them; so a storm of changes explains itself (case-crossover design; Maclure, American Journal of Epidemiology 133, 1991). A change and a loss that one clock brings every few minutes would look alike.',
  ],
  [
    'rhythm',
    'Rhythm: counted are bouts, losses less than 12 h apart being one. Their spacings beyond those 12 h are compared with exponential ones (Bartlett’s test; Moran, Journal of the Royal Statistical Society B 13, 1951), their clock times in the site’s zone with an even spread (Rayleigh test; Zar, Biostatistical Analysis, section 27.1, 2010). Losses that are looked for at certain hours only would gather there.',
  ],
];
const shared =
  'Each of these kinds is told in at most 1 of 100 fleets without any trouble, however many questions were asked of however many pairs (Holm, Scandinavian Journal of Statistics 6, 1979).';

/** How the findings that rest on chance were computed; empty where there are none. */
export function questionWords(findings: readonly Finding[]): string {
  const own = words.flatMap(([id, said]) => (findings.some((f) => f.id === id) ? [said] : []));
  return own.length === 0 ? '' : ['How this was computed.', ...own, shared].join(' ');
}
