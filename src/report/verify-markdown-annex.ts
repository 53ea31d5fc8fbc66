import type { Swap, Verification } from '../vocabulary.ts';
import { markdown } from './escape.ts';
import { table } from './markdown-table.ts';
import type { ReportOptions } from './report-options.ts';
import { checkedByHand, signCaveat } from './sign-words.ts';
import { sayCount, sayInstantBounds } from './words.ts';

const mostOthers = 25;

/** What happened besides the steps, under its heading; empty if nothing did. */
export function otherEvents(swap: Swap, { zone }: ReportOptions): readonly string[] {
  const all = swap.otherEvents;
  if (all.length === 0) return [];
  const rows = all
    .slice(0, mostOthers)
    .map((e) => [
      sayInstantBounds(e, zone, swap.from),
      markdown(e.half ?? 'pair'),
      markdown(`${e.signal}${e.value === null ? '' : ` ${e.value}`}`),
    ]);
  const more =
    all.length > mostOthers ? [`${sayCount(all.length - mostOthers, 'more event')}: see the timeline.`] : [];
  return ['## Other events', table(['Time', 'Half', 'Event'], rows), ...more];
}

/** Blanks to sign on; what was not observed is ticked off by hand. */
export function signOff({ job }: Verification, swap: Swap): string {
  const byHand = checkedByHand(swap).map((c) => `- \\[ \\] ${markdown(c.title)}, checked at the cabinet`);
  const names = [
    ['Done by', job?.technician],
    ['Reviewed by', job?.reviewer],
  ].map(([role = '', name = '']) => [role, markdown(name), '', '']);
  return [
    '## Sign-off',
    byHand.join('\n'),
    signCaveat(swap) ?? '',
    table(['', 'Name', 'Signature', 'Date'], names),
  ]
    .filter((block) => block !== '')
    .join('\n\n');
}
