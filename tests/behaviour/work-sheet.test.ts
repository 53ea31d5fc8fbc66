import { describe, expect, test } from 'vitest';
import { defaultLimits } from '../../src/limits.ts';
import type { WorkStep } from '../../src/vocabulary.ts';
import { sheetOf } from '../../src/work-sheet.ts';
import { at } from '../support/clean-swap.ts';
import { factsOfPair } from '../support/pair-facts.ts';
import { morning, numbers, sheetOfFiles, twoDays, without } from '../support/prepared.ts';

const day = 86_400_000;

describe('fitness', () => {
  test('is that of the last line, each reason with its lines', async () => {
    const fit = await sheetOfFiles(twoDays(morning));
    expect([fit.readiness.fit, fit.readiness.reasons]).toEqual([true, []]);
    const pending = ['08:50:00 RO1 configuration pending', '09:00:00 RO1 B supply good'];
    const unfit = await sheetOfFiles(twoDays(morning, pending));
    expect(unfit.readiness.fit).toBe(false);
    expect(unfit.readiness.reasons.map((r) => [r.statement, numbers(r.evidence)])).toEqual([
      ['A configuration is pending.', [13]],
    ]);
  });

  test('of lines older than a day is not known any more, unless old lines are asked for', async () => {
    const now = at('09:00:00') + 2 * day;
    const old = await sheetOfFiles(twoDays(morning), { now });
    expect(old.readiness.fit).toBe(null);
    expect(old.readiness.reasons.map((r) => r.statement)).toEqual([
      'Its newest line is older than a day: what it says may no longer be so.',
    ]);
    expect((await sheetOfFiles(twoDays(morning), { now, allowOld: true })).readiness.fit).toBe(true);
  });

  test('that speaks against the pair stays so, however old', async () => {
    const pending = ['08:50:00 RO1 configuration pending', '09:00:00 RO1 B supply good'];
    const { readiness } = await sheetOfFiles(twoDays(morning, pending), { now: at('09:00:00') + 2 * day });
    expect(readiness.fit).toBe(false);
  });
});

describe('what a new module must come to', () => {
  test('is the firmware of the other half where nothing is planned', async () => {
    const differ = without(morning, 'B firmware').concat('08:40:00 RO1 B firmware 6.2.0');
    const { halves } = await sheetOfFiles(twoDays(differ));
    expect(halves.map(({ half, wanted }) => [half, wanted.firmware, wanted.from, wanted.model])).toEqual([
      ['A', '6.2.0', 'other-half', null],
      ['B', '6.4.1', 'other-half', null],
    ]);
  });

  test('is what is planned for its half, model and firmware', async () => {
    const job = { plan: { RO1: { B: { model: 'Tern-4', firmware: '6.5.0' } } } };
    const { halves } = await sheetOfFiles(twoDays(morning), { job });
    expect(halves.map(({ half, wanted }) => [half, wanted.firmware, wanted.from, wanted.model])).toEqual([
      ['A', '6.4.1', 'other-half', null],
      ['B', '6.5.0', 'plan', 'Tern-4'],
    ]);
  });

  test('is not known where neither tells', async () => {
    const { halves } = await sheetOfFiles(twoDays(without(morning, 'A firmware')));
    expect(halves[1]?.wanted).toEqual({ firmware: null, from: null, model: null });
  });
});

describe('trouble of the days before', () => {
  const lost = (date: string, clock: string): string =>
    `${date}T${clock}:00.000Z RO1 partner not ready\n${date}T${clock}:30.000Z RO1 partner ready\n`;

  test('is the losses and findings of the last thirty days, the newest loss first', async () => {
    const start = twoDays(morning, ['08:40:00 RO1 configuration current']).replaceAll('2026-03', '2026-01');
    const end = twoDays(['09:00:00 RO1 configuration current']);
    // The last line is of 14 March, 09:00: thirty days before is 12 February, 09:00.
    const told = `${start}${lost('2026-02-12', '08:59')}${lost('2026-02-12', '09:01')}${lost('2026-03-02', '10:00')}${end}`;
    const { losses, trouble, troubleDays } = await sheetOfFiles(told);
    expect(losses.map((l) => new Date(l.time).toISOString())).toEqual([
      '2026-03-02T10:00:00.000Z',
      '2026-02-12T09:01:00.000Z',
    ]);
    // Lines 1 to 13 begin the log, then two lines for each loss.
    expect(losses.map((l) => numbers(l.evidence))).toEqual([[18], [16]]);
    expect(trouble.map((f) => [f.id, f.from])).toEqual([
      ['unplanned-exposure', Date.parse('2026-02-12T09:01:00Z')],
      ['unplanned-exposure', Date.parse('2026-03-02T10:00:00Z')],
    ]);
    expect(troubleDays).toEqual({ asked: 30, covered: 30 });
  });

  test('says how much of those days the log covers', async () => {
    const { losses, trouble, troubleDays } = await sheetOfFiles(twoDays(morning));
    expect([losses, trouble]).toEqual([[], []]);
    // 24 h 20 min of 24 h.
    expect(troubleDays.covered).toBeCloseTo(1 + 20 / 1440, 6);
  });
});

describe('the exposure to expect', () => {
  const step = (id: WorkStep['id'], half: string, median: number | null, n = 9): WorkStep => ({
    id,
    half,
    title: id,
    limitSeconds: 900,
    holdPoint: null,
    expected: median === null ? null : { median, p95: null, n },
  });

  test('is the sum of the medians from removal to ready, per half, with the fewest they rest on', async () => {
    const facts = await factsOfPair(morning);
    const steps = [
      step('out', 'B', 1000),
      step('in', 'B', 95),
      step('identified', 'B', 20, 4),
      step('reflash', 'B', 150),
      step('ready', 'B', 130, 12),
      step('steady', 'B', 260),
      step('in', 'A', 90),
      step('ready', 'A', null),
    ];
    const asked = { now: at('09:00:00'), allowOld: false };
    const { exposure } = sheetOf(facts, {}, steps, defaultLimits, asked);
    expect(exposure).toEqual([
      // 95 + 20 + 150 + 130.
      { half: 'B', seconds: 395, n: 4, unknown: [] },
      { half: 'A', seconds: null, n: 0, unknown: ['ready'] },
    ]);
  });
});
