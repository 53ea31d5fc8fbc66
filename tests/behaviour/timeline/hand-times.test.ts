import { expect, test } from 'vitest';
import { handTimes } from '../../../src/timeline/hand-times.ts';
import { factsOfPair } from '../../support/pair-facts.ts';

const before = ['08:40:00 RO1 A role active', '08:40:00 RO1 B role standby', '08:40:00 RO1 B serial T2-1'];

/** A swap of half B: out, in after some seconds, its reflash some seconds later. */
async function swap(outSeconds: number, reflashSeconds: number | null): ReturnType<typeof factsOfPair> {
  const clock = (seconds: number): string => new Date(seconds * 1000).toISOString().slice(11, 19);
  const out = 9 * 3600;
  return factsOfPair([
    ...before,
    `${clock(out)} RO1 B module removed`,
    `${clock(out + outSeconds)} RO1 B module inserted`,
    `${clock(out + outSeconds + 1)} RO1 B serial T4-2`,
    ...(reflashSeconds === null ? [] : [`${clock(out + outSeconds + reflashSeconds)} RO1 B reflash start`]),
    '09:30:00 RO1 B light steady',
  ]);
}

test('the times of hands are those of the swaps that were logged, from removal to insertion and on to the reflash', async () => {
  const fleet = await Promise.all([swap(80, 30), swap(120, 60), swap(100, null)]);
  expect(handTimes(fleet)).toEqual({
    // Of 80, 100 and 120 the second; 95 in 100 of three are all three.
    in: { median: 100, p95: 120, n: 3 },
    // Of 30 and 60 half are done at 30.
    identified: { median: 30, p95: 60, n: 2 },
  });
});

test('nobody tells of them where nothing was replaced, and polls and notes are left out', async () => {
  expect(handTimes([await factsOfPair(before)])).toEqual({ in: null, identified: null });
  const noted = await factsOfPair({
    'ro1.log': [
      '2026-03-14T08:40:00.000Z RO1-B role standby',
      '2026-03-14T08:40:00.000Z RO1-B serial T2-1',
      '2026-03-14T09:20:00.000Z RO1-B serial T4-2',
      '',
    ].join('\n'),
    'notes.txt':
      'Pair RO1\n14 Mar 2026\n09:14 pulled standby from slot B\n09:16 fitted new module in slot B\n',
  });
  expect(noted.moduleChanges).toHaveLength(1);
  expect(handTimes([noted])).toEqual({ in: null, identified: null });
});
