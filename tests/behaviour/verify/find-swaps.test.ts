import { describe, expect, test } from 'vitest';
import { change, ends, first, on, said, swaps } from '../../support/swap-journals.ts';

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
