import type { CheckStatus, Swap } from '../../../src/vocabulary.ts';
import type { Dressed } from '../stories/dressing.ts';
import type { ToldSwap } from '../stories/swap-story.ts';
import type { TrueCheck } from '../stories/truth.ts';
import { isHidden } from './is-hidden.ts';
import { replacementsTold, tellsStarts } from './what-is-told.ts';

/** What is wrong with an answer, or what is no more than a pity: its kind, and the checks or words that it concerns. */
export interface Miss {
  readonly kind: MissKind;
  readonly about: string;
}

export const missKinds = [
  'false verified',
  'verified, break not observed',
  'verified, break hidden',
  'false not-verified',
  'no swap found',
  'several swaps found',
  'swap found that no file tells',
  'false pass',
  'false fail',
] as const;
export type MissKind = (typeof missKinds)[number];

/**
 * Compares the answer with the truth.
 *
 * - `false verified`: the truth breaks a check, and the verdict is `verified` though that check is `pass`, or is not among
 *   those judged. If every broken check is `not-observed`, the person is told to sign for it: `break not observed`.
 * - A break that the dressing cannot show (see `isHidden`) is no false pass: `break hidden`.
 * - A check that passes on a signal that no file ever tells is a false pass: it had to be `not-observed`.
 * - `false not-verified`: every check truly holds, and the verdict is `not-verified`.
 * - `false pass` and `false fail`: the same, check by check, whatever the verdict. What the rules leave undecided counts
 *   for nothing; nor does a swap of which the files show one replacement and not the other, or a bring-up that seems too
 *   long since they do not tell where it began (see `what-is-told.ts`).
 */
export function judgeSwap(told: ToldSwap, dressed: Dressed, swaps: readonly Swap[]): readonly Miss[] {
  const [swap, ...more] = swaps;
  const shown = replacementsTold(told.truth, dressed.sources);
  if (shown === 'none')
    return swap === undefined ? [] : [{ kind: 'swap found that no file tells', about: swap.verdict }];
  if (swap === undefined) return [{ kind: 'no swap found', about: told.fault?.id ?? 'good' }];
  if (shown === 'some') return [];
  if (more.length > 0) return [{ kind: 'several swaps found', about: told.fault?.id ?? 'good' }];
  const knowsStarts = tellsStarts(told.truth, dressed.sources);
  const checks = told.truth.checks.filter((c) => knowsStarts || !fromStart.has(c.id));
  const statusOf = (check: TrueCheck): CheckStatus | undefined =>
    swap.checks.find((c) => c.id === check.id)?.status;
  const broken = checks.filter((c) => c.holds === false);
  const passed = broken.filter((c) => statusOf(c) === 'pass');
  const falsely = passed.filter((c) => !isHidden(c, dressed.sources));
  const failed = checks.filter((c) => c.holds === true && statusOf(c) === 'fail');
  const missing = broken.filter((c) => statusOf(c) === undefined);
  return [
    ...ofVerdict(swap, broken, [...falsely, ...missing], passed),
    ...(swap.verdict === 'not-verified' &&
    checks.length === told.truth.checks.length &&
    checks.every((c) => c.holds === true)
      ? [{ kind: 'false not-verified', about: named(failed) } as const]
      : []),
    ...falsely.map(({ id }) => ({ kind: 'false pass', about: id }) as const),
    ...failed.map(({ id }) => ({ kind: 'false fail', about: id }) as const),
  ];
}

/** Checks of how long a bring-up took. */
const fromStart: ReadonlySet<string> = new Set(['synchronised', 'light-steady']);

function ofVerdict(
  { verdict }: Swap,
  broken: readonly TrueCheck[],
  falsely: readonly TrueCheck[],
  passed: readonly TrueCheck[],
): readonly Miss[] {
  if (verdict !== 'verified' || broken.length === 0) return [];
  if (falsely.length > 0) return [{ kind: 'false verified', about: named(falsely) }];
  const kind = passed.length > 0 ? 'verified, break hidden' : 'verified, break not observed';
  return [{ kind, about: named(broken) }];
}

function named(checks: readonly TrueCheck[]): string {
  return checks.map((c) => c.id).join(', ');
}
