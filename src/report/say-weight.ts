import { sayOdds } from '../vocabulary.ts';

/** How the causes were ranked, for the person who reads the report. */
export const rankingRule =
  'How this was computed. Each cause has odds: how much more often the logs show it at failures than at other times or by chance, combined with common practice. From 10 to 1 on, a state that can be put right comes before a pattern that it may cause; otherwise the higher odds come first. Below 10 to 1 no cause is named.';

/**
 * A weight in decibans as a person would say it. Words after Jeffreys, Theory of Probability (1961), appendix B: from ten
 * to one on strong, from a hundred to one on decisive (there by half powers of ten; from memory).
 */
export function sayWeight(decibans: number | null): string {
  if (decibans === null) return 'no cause reaches 10 to 1';
  const word = decibans >= 20 ? 'decisive' : decibans >= 10 ? 'strong' : 'weak';
  return `${word}, ${sayOdds(decibans)}`;
}
