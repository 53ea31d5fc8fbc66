import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { verify } from '../../../src/pipeline.ts';
import type { Job, Swap } from '../../../src/vocabulary.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

type Plan = NonNullable<Job['plan']>[string];

/** The partner of half A is absent from 10:10:00 to 10:12:41, and ready again at 10:13:41. */
const absent = readFileSync('tests/fixtures/faults/present.log', 'utf8');

async function swapsOf(text: string, plan: Plan | null): Promise<readonly Swap[]> {
  const job = plan === null ? null : { plan: { RO1: plan } };
  return verify(await analyseTexts({ 'ro1.log': text }), null, { from: null, to: null }, job).swaps;
}
const clock = (time: number | undefined): string | undefined =>
  time === undefined ? undefined : new Date(time).toISOString().slice(11, 19);
const moves = (swaps: readonly Swap[]): readonly unknown[] =>
  swaps.flatMap((s) => s.halves.map((h) => [h.half, clock(h.removedAt.time), clock(h.insertedAt?.time)]));

describe('an absence of the partner', () => {
  test('is no swap by itself', async () => {
    expect(await swapsOf(absent, null)).toEqual([]);
  });

  test('is one where the plan names the half that was to be replaced', async () => {
    const swaps = await swapsOf(absent, { B: {} });
    expect(moves(swaps)).toEqual([['B', '10:10:00', '10:12:41']]);
    // No log tells of a module: what came, and how it started, is not known.
    expect(swaps.map((s) => s.verdict)).toEqual(['inconclusive']);
    const taken = swaps[0]?.checks.find((c) => c.id === 'identified-standby');
    expect([taken?.status, taken?.statement]).toEqual([
      'inconclusive',
      'No line states the role of half B after its insertion; the partner is ready at the end.',
    ]);
    const removed = swaps[0]?.checks.find((c) => c.id === 'removed-standby');
    expect([removed?.status, removed?.statement]).toEqual([
      'pass',
      'Half B was standby when it was removed.',
    ]);
    expect(removed?.evidence.map((line) => line.line)).toEqual([2, 5]);
  });

  test('is none where the plan names both halves: which one was out is not known', async () => {
    expect(await swapsOf(absent, { A: {}, B: {} })).toEqual([]);
  });

  test('is not a second one where a log tells of the removal of that half', async () => {
    const told = journalText(
      [
        '10:00:00 RO1 A role active',
        '10:00:00 RO1 B role standby',
        '10:00:00 RO1   partner present',
        '10:05:00 RO1   partner absent',
        '10:06:00 RO1   partner present',
        '10:10:00 RO1 B module removed',
        '10:15:00 RO1 B module inserted',
      ].join('\n'),
    );
    expect(moves(await swapsOf(told, { B: {} }))).toEqual([['B', '10:10:00', '10:15:00']]);
  });

  test('that goes on when the log ends is a swap that has begun', async () => {
    const gone = `${absent.trimEnd().split('\n').slice(0, 5).join('\n')}\n2026-03-01T10:12:00Z RO1-A link a up\n`;
    const swaps = await swapsOf(gone, { B: {} });
    expect(moves(swaps)).toEqual([['B', '10:10:00', undefined]]);
    expect(swaps[0]?.open?.awaits).toBe('in');
  });
});
