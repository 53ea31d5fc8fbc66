/** Swaps replayed as their logs grow: at every step the hold point agrees with what truly was. `npm run replay` takes many. */
import { beforeAll, describe, expect, test } from 'vitest';
import { swapsNow } from '../../src/pipeline.ts';
import type { HoldStatus, SwapNow } from '../../src/vocabulary.ts';
import { judgeStep } from '../support/replay/judge-step.ts';
import { replayAll } from '../support/replay/replay.ts';
import { dress } from '../support/stories/dressings.ts';
import { faults } from '../support/stories/faults.ts';
import { swapStory, type ToldSwap } from '../support/stories/swap-story.ts';
import { verifyFiles } from '../support/verify-files.ts';

/** The swap of a seed with a fault by its name, or none. */
function told(seed: number, id: string | null): ToldSwap {
  const fault = id === null ? null : faults.find((f) => f.id === id);
  if (fault === undefined) throw new RangeError(`There is no fault ${id}.`);
  return swapStory(seed, fault);
}

describe('a replay in sixty steps', () => {
  test.each([
    [null, 'journal-and-poll'],
    ['sync-never', 'text-log'],
    ['active-pulled', 'journal'],
    ['switchover-not-ready', 'half-logs'],
    ['light-late', 'poll'],
  ])('of a swap with %s, as %s, agrees with the truth at every step', async (fault, dressing) => {
    const tally = await replayAll([told(7, fault)], 60, dressing);
    expect(tally.steps).toBeGreaterThanOrEqual(10);
    expect([...tally.misses]).toEqual([]);
  });
});

describe('a step that is wrong is counted', () => {
  const good = told(1, null);
  const journal = dress(good.story, 1, 'journal');
  let end: SwapNow;
  beforeAll(async () => {
    const { analysed } = await verifyFiles(journal.files, null);
    const [now] = swapsNow(analysed, good.story.pair, null);
    if (now === undefined) throw new Error('The journal shows no swap.');
    end = now;
  });
  const kinds = (now: SwapNow): readonly string[] => judgeStep(good, journal, now, now.at).map((m) => m.kind);
  const wrong = (id: string, half: string | null, status: HoldStatus, at: number): SwapNow => {
    const condition = { ...end.holdPoint.conditions[0], id, half, status };
    return {
      ...end,
      at,
      swap: null,
      awaits: 'baseline',
      holdPoint: { ...end.holdPoint, id: 'removal', half, status, conditions: [condition] },
    };
  };

  test('not where all is right', () => {
    expect(kinds(end)).toEqual([]);
  });

  test('as met too early: the ready partner is not there for long enough', () => {
    const { truth, story } = good;
    const soon = truth.firstRemoval + 60_000;
    expect(kinds(wrong('ready', null, 'met', soon))).toContain('met too early');
    const [half] = truth.replacements.map((r) => r.half);
    expect(kinds(wrong('roles', half ?? null, 'met', truth.firstRemoval - 1000))).toEqual([]);
    expect(kinds(wrong('roles', half ?? null, 'met', soon))).toContain('met too early');
    expect(story.from).toBeLessThan(soon);
  });

  test('as met too early: read before a switchover that is noted by now', () => {
    // One of those with a switchover, of the only half that was replaced by then.
    const swap = told(71, null);
    const command = swap.story.events.find((e) => e.signal === 'switchover-command');
    const [half] = swap.truth.replacements.map((r) => r.half);
    if (command === undefined || half === undefined) throw new Error('The swap has no switchover.');
    const files = dress(swap.story, 71, 'poll-and-notes');
    const minute = Math.floor(command.time / 60_000) * 60_000 + 60_000;
    const said = (readAt: number): readonly string[] => {
      const now = wrong('roles', half, 'met', command.time - 1);
      const holdPoint = { ...now.holdPoint, id: 'switchover' as const };
      return judgeStep(swap, files, { ...now, holdPoint }, readAt).map((m) => m.kind);
    };
    expect(said(minute)).toContain('met too early');
    // The minute is not over: nothing is noted yet, and the reading still held.
    expect(said(minute - 1)).not.toContain('met too early');
  });

  test('as a stop without a reason, as another step, as another open swap', () => {
    const before = good.truth.firstRemoval - 1000;
    expect(kinds(wrong('steady', 'A', 'stop', before))).toEqual(['stop without a reason']);
    expect(kinds({ ...wrong('steady', 'A', 'waiting', before), awaits: 'in' })).toEqual([
      'other step awaited',
    ]);
    expect(kinds({ ...end, awaits: 'soak' })).toContain('open swap differs');
  });

  test('as a stop that is missing', async () => {
    const stuck = told(1, 'active-pulled');
    const files = dress(stuck.story, 1, 'journal');
    const [now] = swapsNow((await verifyFiles(files.files, null)).analysed, stuck.story.pair, null);
    if (now === undefined) throw new Error('The journal shows no swap.');
    expect(judgeStep(stuck, files, now, now.at)).toEqual([]);
    const waiting = { ...now, holdPoint: { ...now.holdPoint, status: 'waiting' as const } };
    expect(judgeStep(stuck, files, waiting, now.at).map((m) => m.kind)).toEqual(['stop missing']);
  });
});
