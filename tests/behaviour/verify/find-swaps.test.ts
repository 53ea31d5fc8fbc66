import { describe, expect, test } from 'vitest';
import { verify } from '../../../src/pipeline.ts';
import type { SwapFilter } from '../../../src/verify/find-swaps.ts';
import type { Swap } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../../support/read-text.ts';

const open: SwapFilter = { from: null, to: null };
/** An instant of March 2026: its day and clock. */
const on = (stamp: string): number => Date.parse(`2026-03-${stamp}Z`);
const said = (time: number): string => new Date(time).toISOString().slice(8, 23).replace('.000', '');

/** The swaps of a journal of March 2026, each line with its day and clock; half A is active, half B ready. */
async function swaps(lines: readonly string[], filter = open): Promise<readonly Swap[]> {
  const begin = ['14T08:00:00 RO1-A role active', '14T08:00:00 RO1-B role standby'];
  const journal = [...begin, '14T08:00:00 RO1 partner ready', ...lines].map((line) => {
    const [stamp = '', ...rest] = line.split(' ');
    return `2026-03-${stamp}${stamp.includes('.') ? '' : '.000'}Z ${rest.join(' ')}\n`;
  });
  return verify(await analyseTexts({ 'ro1.log': journal.sort().join('') }), null, filter, null).swaps;
}

/** A module that comes into half B, out for two minutes; not ready while it is out. */
const change = (removed: string, inserted: string, serial: string): readonly string[] => [
  `${removed} RO1-B module removed`,
  `${removed} RO1 partner not ready`,
  `${inserted} RO1-B module inserted`,
  `${inserted} RO1-B serial ${serial}`,
];
const first = ['14T08:00:00 RO1-B serial T2-1', ...change('14T09:00:00', '14T09:02:00', 'T4-2')];
const ends = (found: readonly Swap[]): readonly string[] =>
  found.map(({ from, to }) => `${said(from)} ${said(to)}`);

describe('a swap', () => {
  test('reaches from 15 min before the removal to 30 min after it settled', async () => {
    const lines = [...first, '14T09:07:00 RO1 partner ready', '14T12:00:00 RO1-A light off'];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 14T09:37:00']);
  });

  test('ends with the log, or where the user says, if that comes first', async () => {
    const lines = [...first, '14T09:07:00 RO1 partner ready', '14T09:30:00 RO1-A light off'];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 14T09:30:00']);
    expect(ends(await swaps(lines, { from: null, to: on('14T09:20:00') }))).toEqual([
      '14T08:45:00 14T09:20:00',
    ]);
  });

  test('that never settled ends with the log', async () => {
    expect(ends(await swaps([...first, '14T12:00:00 RO1-A light off']))).toEqual(['14T08:45:00 14T12:00:00']);
  });

  test('that had not settled where the user says the end is, ends there', async () => {
    const lines = [...first, '14T09:07:00 RO1 partner ready', '14T12:00:00 RO1-A light off'];
    expect(ends(await swaps(lines, { from: null, to: on('14T09:06:00') }))).toEqual([
      '14T08:45:00 14T09:06:00',
    ]);
  });

  test('goes on where a restart follows before 30 min are over', async () => {
    const lines = [
      ...first,
      '14T09:07:00 RO1 partner ready',
      '14T09:37:00 RO1-B module restart',
      '14T09:37:00 RO1 partner not ready',
      '14T09:40:00 RO1 partner ready',
      '14T12:00:00 RO1-A light off',
    ];
    const [swap, ...others] = await swaps(lines);
    expect(ends(swap === undefined ? [] : [swap])).toEqual(['14T08:45:00 14T10:10:00']);
    expect(swap?.bringUps.map((b) => [b.cause, b.outcome])).toEqual([
      ['inserted', 'settled'],
      ['restart', 'settled'],
    ]);
    expect(others).toEqual([]);
  });

  test('does not go on for a restart after that, nor look at what was before it', async () => {
    const lines = [
      '14T08:20:00 RO1-B module restart',
      '14T08:20:00 RO1 partner not ready',
      '14T08:22:00 RO1 partner ready',
      ...first,
      '14T09:07:00 RO1 partner ready',
      '14T09:37:00.500 RO1-B module restart',
      '14T09:37:00.500 RO1 partner not ready',
      '14T09:40:00 RO1 partner ready',
      '14T12:00:00 RO1-A light off',
    ];
    const found = await swaps(lines);
    expect(ends(found)).toEqual(['14T08:45:00 14T09:37:00']);
    expect(found.map((s) => s.bringUps.map((b) => b.cause))).toEqual([['inserted']]);
  });

  test('goes on from a reflash that came before the new module was ready', async () => {
    const lines = [
      ...first,
      '14T09:03:00 RO1-B reflash start',
      '14T09:05:00 RO1-B reflash end',
      '14T09:10:00 RO1 partner ready',
      '14T12:00:00 RO1-A light off',
    ];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 14T09:40:00']);
  });

  test('looks at its own switchovers only', async () => {
    const roles = (stamp: string, active: string, standby: string): readonly string[] => [
      `${stamp} RO1-${active} role active`,
      `${stamp} RO1-${standby} role standby`,
    ];
    const lines = [
      ...roles('14T08:30:00', 'B', 'A'),
      ...roles('14T08:40:00', 'A', 'B'),
      ...first,
      '14T09:07:00 RO1 partner ready',
      ...roles('14T09:20:00', 'B', 'A'),
      ...roles('14T09:50:00', 'A', 'B'),
      '14T12:00:00 RO1-A light off',
    ];
    const [swap] = await swaps(lines);
    expect(swap?.switchovers.map((s) => `${said(s.at.time)} ${s.fromHalf}${s.toHalf}`)).toEqual([
      '14T09:20:00 AB',
    ]);
  });
});

describe('several changes', () => {
  const ready = ['14T09:07:00 RO1 partner ready', '15T12:00:00 RO1-A light off'];

  test('within 24 h are one swap, which ends 30 min after the last has settled', async () => {
    const lines = [
      ...first,
      ...ready,
      ...change('15T09:00:00', '15T09:02:00', 'T4-3'),
      '15T09:08:00 RO1 partner ready',
    ];
    const found = await swaps(lines);
    expect(ends(found)).toEqual(['14T08:45:00 15T09:38:00']);
    expect(found.map((s) => s.halves.map((h) => h.serial))).toEqual([[{ before: 'T2-1', after: 'T4-3' }]]);
  });

  test('of which the last never settled: the swap ends with the log', async () => {
    const lines = [...first, ...ready, ...change('14T12:00:00', '14T12:02:00', 'T4-3')];
    expect(ends(await swaps(lines))).toEqual(['14T08:45:00 15T12:00:00']);
  });

  test('more than 24 h apart are two swaps; the first ends at the latest where the second begins', async () => {
    const later = [...change('15T09:00:01', '15T09:02:00', 'T4-3'), '15T09:08:00 RO1 partner ready'];
    expect(ends(await swaps([...first, ...ready, ...later]))).toEqual([
      '14T08:45:00 14T09:37:00',
      '15T08:45:01 15T09:38:00',
    ]);
    expect(ends(await swaps([...first, '15T12:00:00 RO1-A light off', ...later]))).toEqual([
      '14T08:45:00 15T09:00:01',
      '15T08:45:01 15T09:38:00',
    ]);
  });

  test('are picked by the time that the user gives: inserted from then on, removed until then', async () => {
    const later = [...change('15T10:00:00', '15T10:02:00', 'T4-3'), '15T10:08:00 RO1 partner ready'];
    const begins = async (from: string | null, to: string | null): Promise<readonly string[]> => {
      const filter = { from: from === null ? null : on(from), to: to === null ? null : on(to) };
      return (await swaps([...first, ...ready, ...later], filter)).map((s) => said(s.from));
    };
    const both = ['14T08:45:00', '15T09:45:00'];
    expect(await begins(null, null)).toEqual(both);
    expect(await begins('14T09:02:00', null)).toEqual(both);
    expect(await begins('14T09:02:00.001', null)).toEqual(['15T09:45:00']);
    expect(await begins(null, '15T10:00:00')).toEqual(both);
    expect(await begins(null, '15T09:59:59.999')).toEqual(['14T08:45:00']);
    expect(await begins('14T10:00:00', '15T09:00:00')).toEqual([]);
  });
});
