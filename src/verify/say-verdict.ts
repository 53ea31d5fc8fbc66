import type { CheckResult, CheckStatus, Verdict } from '../vocabulary.ts';
import type { SwapCase } from './check.ts';
import type { Unread } from './unread.ts';

/** The verdict in a sentence, with what is waited for, and what it cannot know. */
export function sayVerdict(
  { facts, changes, open, from, to }: SwapCase,
  verdict: Verdict,
  results: readonly CheckResult[],
  unread: Unread,
): string {
  const { pair } = facts.timeline;
  const titles = (status: CheckStatus): string =>
    results
      .filter((r) => r.status === status)
      .map((r) => r.title.charAt(0).toLowerCase() + r.title.slice(1))
      .join('; ');
  const unseen = titles('not-observed');
  const rows = unread.rowsBetween(from, to);
  const it = unread.leftOut.length === 1 ? 'it' : 'them';
  const doubts = [
    ...(unseen === '' ? [] : [`Not observed, to be signed for by hand: ${unseen}.`]),
    ...(unread.leftOut.length === 0
      ? []
      : [`Nothing of ${unread.leftOut.join(', ')} could be used: read again without ${it}, or mend ${it}.`]),
    ...(rows === 0
      ? []
      : [
          `${rows === 1 ? 'One row' : `${rows} rows`} of its time ${rows === 1 ? 'was' : 'were'} not recognised.`,
        ]),
  ];
  const what = whatWasDone(changes);
  if (verdict === 'verified')
    return [`Pair ${pair} is verified: ${what} and it came back redundant.`, ...doubts].join(' ');
  const waiting = open === null ? [] : [open.statement];
  if (verdict === 'not-verified') {
    const failed = `Pair ${pair} is not verified: ${what}, but these checks failed: ${titles('fail')}.`;
    return [failed, ...waiting, ...doubts].join(' ');
  }
  if (open !== null)
    return [`The swap of pair ${pair} is not over: ${what}.`, ...waiting, ...doubts].join(' ');
  const undecided = titles('inconclusive');
  const why = undecided === '' ? [] : [`The logs do not settle: ${undecided}.`];
  return [`Pair ${pair} is neither verified nor refuted: ${what}.`, ...why, ...doubts].join(' ');
}

/** Which halves were replaced, and which only taken out so far. */
function whatWasDone(changes: SwapCase['changes']): string {
  const last = new Map(changes.map((c) => [c.half, c]));
  const out = [...last.values()].filter((c) => c.inserted === null).map((c) => c.half);
  const done = [...last.keys()].filter((half) => !out.includes(half));
  const replaced =
    done.length === 0
      ? []
      : [done.length === 1 ? `half ${done[0]} was replaced` : `halves ${done.join(' and ')} were replaced`];
  const removed =
    out.length === 0
      ? []
      : [out.length === 1 ? `half ${out[0]} was removed` : `halves ${out.join(' and ')} were removed`];
  return [...replaced, ...removed].join(', ');
}
