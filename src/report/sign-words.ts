import type { CheckResult, Swap } from '../vocabulary.ts';

/** What a signature on a swap that is not verified means; `null` where it is. */
export function signCaveat({ verdict, open }: Swap): string | null {
  if (open !== null) return 'The swap is still open: do not sign yet.';
  return verdict === 'verified'
    ? null
    : 'This swap is not verified: a signature accepts it with the results above.';
}

/** The checks that no log can show, for the person who signs. */
export function checkedByHand({ checks }: Swap): readonly CheckResult[] {
  return checks.filter((c) => c.status === 'not-observed');
}
