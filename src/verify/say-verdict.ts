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
  const countOf = (status: CheckStatus): string =>
    `${results.filter((r) => r.status === status).length} of ${results.length} checks`;
  const unseen = titles('not-observed');
  const rows = unread.rowsBetween(from, to);
  const it = unread.leftOut.length === 1 ? 'it' : 'them';
  const doubts = [
    ...(unseen === '' ? [] : [`Not observed, check at the cabinet and sign by hand: ${unseen}.`]),
    ...(unread.leftOut.length === 0
      ? []
      : [`${unread.leftOut.join(', ')} could not be used: mend ${it}, or read again without ${it}.`]),
    ...(rows === 0
      ? []
      : [
          `${rows === 1 ? 'One row' : `${rows} rows`} during the swap ${rows === 1 ? 'was' : 'were'} not recognised.`,
        ]),
  ];
  const what = whatWasDone(changes);
  if (verdict === 'verified')
    return [`Pair ${pair} is verified: ${what} and it came back redundant.`, ...doubts].join(' ');
  const waiting = open === null ? [] : [open.statement];
  if (verdict === 'not-verified') {
    const failed = `Pair ${pair} is not verified: ${what}, but ${countOf('fail')} failed: ${titles('fail')}.`;
    return [failed, ...waiting, ...doubts].join(' ');
  }
  if (open !== null)
    return [`The swap of pair ${pair} is still open: ${what}.`, ...waiting, ...doubts].join(' ');
  const undecided = titles('inconclusive');
  const why = undecided === '' ? '' : `, but ${countOf('inconclusive')} came out inconclusive: ${undecided}`;
  return [`The swap of pair ${pair} is inconclusive: ${what}${why}.`, ...doubts].join(' ');
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
