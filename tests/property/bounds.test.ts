import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readingsCsv, snapshotsByHalf, snapshotsByRole } from '../../samples/exports.ts';
import type { cleanSwap } from '../../samples/stories/clean-swap.ts';
import { atRest, tell } from '../../samples/story.ts';
import { plain } from '../../samples/wordings.ts';
import type { BringUp } from '../../src/vocabulary.ts';
import { analyseTexts } from '../support/read-text.ts';

const stamp = { form: 'iso-offset', zone: 'UTC', decimals: 3 } as const;
const begin = Date.UTC(2026, 2, 14, 8);
const old = { model: 'Tern-2', serial: 'T2-1', firmware: '6.2.0' };
const fresh = { model: 'Tern-4', serial: 'T4-2', firmware: '6.4.1' };

/** A standby replaced and reflashed; ready and steady after exactly these seconds from the end of its reflash. */
function swapStory(readySeconds: number, steadySeconds: number): ReturnType<typeof cleanSwap> {
  const teller = tell(
    'RO1',
    begin,
    atRest({ ...old, firmware: '6.4.1' }, { ...old, serial: 'T2-2', firmware: '6.4.1' }),
  );
  teller.wait(1800);
  teller.remove('B');
  teller.wait(240);
  teller.insert('B', { ...fresh, firmware: '6.2.0' });
  teller.reflash('B', '6.4.1', 150);
  teller.synchronise('B', readySeconds, steadySeconds);
  teller.wait(2400);
  return teller.story();
}

function contains({ low, high }: BringUp['light'], truth: number): boolean {
  return low !== null && high !== null && low <= truth && truth <= high;
}

const spacing = fc.integer({ min: 1, max: 120 });
const phase = fc.integer({ min: 0, max: 119_999 }).map((ms) => ms / 1000);

describe('bounds', () => {
  test('always contain the injected truth, at any poll spacing and phase', async () => {
    await fc.assert(
      fc.asyncProperty(
        spacing,
        phase,
        fc.integer({ min: 1_000, max: 400_000 }),
        async (spacingSeconds, phaseSeconds, steadyMs) => {
          const steady = steadyMs / 1000;
          const story = swapStory(steady / 2, steady);
          const style = {
            spacingSeconds,
            phaseSeconds: phaseSeconds % spacingSeconds,
            stamp,
            delimiter: ',',
            wording: plain,
          };
          const { facts } = await analyseTexts({ 'poll.csv': snapshotsByHalf(story, style) });
          const bringUp = facts[0]?.bringUps.at(-1);
          expect(bringUp).toBeDefined();
          if (bringUp === undefined || bringUp.light.seconds === null || bringUp.light.censored) return;
          expect(contains(bringUp.light, steady)).toBe(true);
          if (bringUp.sync.seconds !== null) expect(contains(bringUp.sync, steady / 2)).toBe(true);
          // Never a false pass and never a false fail.
          if (bringUp.light.outcome === 'within') expect(steady).toBeLessThanOrEqual(300);
          if (bringUp.light.outcome === 'exceeded') expect(steady).toBeGreaterThan(300);
        },
      ),
      { numRuns: 60, seed: 20_260_314 },
    );
  });

  test('thinning the poll from 10 s to 120 s turns a light of 295 s from within to inconclusive', async () => {
    const story = swapStory(150, 295);
    const outcome = async (spacingSeconds: number, phaseSeconds: number): Promise<unknown> => {
      const style = { spacingSeconds, phaseSeconds, stamp, delimiter: ',', wording: plain };
      const { facts } = await analyseTexts({ 'poll.csv': readingsCsv(story, style) });
      return facts[0]?.bringUps.at(-1)?.light.outcome;
    };
    // Reflashed 2190 s after the begin, steady at 2485 s. Read every 10 s from 9.5 s on: the old firmware at 2189.5, steady at
    // 2489.5, so at most 300 s. From 2 s on: the old firmware at 2182, steady at 2492: up to 310 s.
    expect(await outcome(10, 9.5)).toBe('within');
    expect(await outcome(10, 2)).toBe('inconclusive');
    for (const phase of [0, 9.5, 37, 61.5, 90, 119]) expect(await outcome(120, phase)).toBe('inconclusive');
  });

  test('a role-addressed export without slot names gives each module to its half, across two switchovers', async () => {
    const teller = tell('RO1', begin, atRest(old, { ...fresh, serial: 'T4-9' }));
    teller.wait(601);
    teller.switchOver(true);
    teller.wait(601);
    teller.switchOver(true);
    teller.wait(601);
    const style = { spacingSeconds: 10, phaseSeconds: 0, stamp, delimiter: ',', wording: plain };
    const { timelines, facts } = await analyseTexts({ 'roles.csv': snapshotsByRole(teller.story(), style) });
    const values = (half: string, signal: string): unknown =>
      timelines[0]?.events.filter((e) => e.half === half && e.signal === signal).map((e) => e.value);
    expect(timelines[0]?.halves).toEqual(['1', '2']);
    expect([values('1', 'serial'), values('2', 'serial')]).toEqual([['T2-1'], ['T4-9']]);
    expect([values('1', 'model'), values('2', 'model')]).toEqual([['Tern-2'], ['Tern-4']]);
    expect([values('1', 'firmware'), values('2', 'firmware')]).toEqual([['6.2.0'], ['6.4.1']]);
    expect(values('1', 'role')).toEqual(['active', 'standby', 'active']);
    expect(facts[0]?.switchovers.map((s) => `${s.fromHalf}>${s.toHalf}`)).toEqual(['1>2', '2>1']);
  });
});
