import type { Finding } from '../vocabulary.ts';

/** How drifts of sync times were found. */
export const driftWords =
  'Counted are sync times known to the second, in the order of their starts, of groups with n of 20 or more. The line is their exponentially weighted moving average, weight 0.1 (NIST/SEMATECH e-Handbook, section 6.3.2.4, 2012); usual is the mean of the first half. With the same times in random order a line leaves the limits in at most 1 of 100 fleets (permutation test; Davison and Hinkley, Bootstrap Methods, section 4.3, 1997). Wrong if pairs that differ were worked on one after the other.';

/** How each kind of finding that rests on chance was found; only what is needed, each kind once. */
const words: readonly (readonly [Finding['id'], string])[] = [
  [
    'coincidence',
    'Coincidence: counted are losses with a change in the 30 s before, against the same changes in the ten minutes before each loss (five, where several losses lie in those), while the pair was ready and observed (case-crossover design; Maclure, 1991). Wrong if one clock brings both every few minutes.',
  ],
  [
    'rhythm',
    'Rhythm: counted are bouts, losses less than 12 h apart being one. Their spacings beyond 12 h are compared with exponential ones (Bartlett’s test; Moran, 1951), their times of day at the site with an even spread (Rayleigh test; Zar, section 27.1, 2010). Wrong if losses are looked for at certain hours only.',
  ],
];
const shared =
  'Each kind is reported in at most 1 of 100 fleets without trouble, over all questions and pairs (Holm, 1979).';

/** How the findings that rest on chance were computed; empty where there are none. */
export function questionWords(findings: readonly Finding[]): string {
  const own = words.flatMap(([id, said]) => (findings.some((f) => f.id === id) ? [said] : []));
  return own.length === 0 ? '' : ['How this was computed.', ...own, shared].join(' ');
}
