import type { CheckResult, Swap } from '../vocabulary.ts';

/** What a signature on a swap that is not verified means; `null` where it is. */
export function signCaveat({ verdict, open }: Swap): string | null {
  if (open !== null) return 'This swap is still open: do not sign before it is over.';
  return verdict === 'verified'
    ? null
    : 'This replacement is not verified: a signature accepts it as it is, with the checks above.';
}

/** The checks that no log can show, for the person who signs. */
export function checkedByHand({ checks }: Swap): readonly CheckResult[] {
  return checks.filter((c) => c.status === 'not-observed');
}
