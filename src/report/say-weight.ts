/**
 * A weight in decibans as a person would say it. Words after Jeffreys, Theory of Probability (1961), appendix B: from ten
 * to one on strong, from a hundred to one on decisive (there by half powers of ten; from memory).
 */
export function sayWeight(decibans: number | null): string {
  if (decibans === null) return 'no cause reaches ten to one';
  const odds = 10 ** (decibans / 10);
  if (decibans >= 20) return `decisive, ${Math.round(odds / 100) * 100} to one`;
  if (decibans >= 10) return `strong, ${Math.round(odds)} to one`;
  return `weak, ${Math.round(odds)} to one`;
}
