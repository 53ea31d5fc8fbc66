import { verify } from '../../src/pipeline.ts';
import type { SwapFilter } from '../../src/verify/find-swaps.ts';
import type { Swap } from '../../src/vocabulary.ts';
import { analyseTexts } from './read-text.ts';

const open: SwapFilter = { from: null, to: null };
/** An instant of March 2026: its day and clock. */
export const on = (stamp: string): number => Date.parse(`2026-03-${stamp}Z`);
/** A day and clock. */
export const said = (time: number): string => new Date(time).toISOString().slice(8, 23).replace('.000', '');

/** The swaps of a journal of March 2026, each line with its day and clock; half A is active, half B ready. */
export async function swaps(lines: readonly string[], filter = open): Promise<readonly Swap[]> {
  const begin = ['14T08:00:00 RO1-A role active', '14T08:00:00 RO1-B role standby'];
  const journal = [...begin, '14T08:00:00 RO1 partner ready', ...lines].map((line) => {
    const [stamp = '', ...rest] = line.split(' ');
    return `2026-03-${stamp}${stamp.includes('.') ? '' : '.000'}Z ${rest.join(' ')}\n`;
  });
  return verify(await analyseTexts({ 'ro1.log': journal.sort().join('') }), null, filter, null).swaps;
}

/** A module that comes into half B, out for two minutes; not ready while it is out. */
export const change = (removed: string, inserted: string, serial: string): readonly string[] => [
  `${removed} RO1-B module removed`,
  `${removed} RO1 partner not ready`,
  `${inserted} RO1-B module inserted`,
  `${inserted} RO1-B serial ${serial}`,
];
/** Who is active from then on, and who is standby. */
export const roles = (stamp: string, active: string, standby: string): readonly string[] => [
  `${stamp} RO1-${active} role active`,
  `${stamp} RO1-${standby} role standby`,
];
/** A swap of half B on the 14th: out at 09:00, in at 09:02. */
export const first = ['14T08:00:00 RO1-B serial T2-1', ...change('14T09:00:00', '14T09:02:00', 'T4-2')];
/** Where each swap begins and ends. */
export const ends = (found: readonly Swap[]): readonly string[] =>
  found.map(({ from, to }) => `${said(from)} ${said(to)}`);
