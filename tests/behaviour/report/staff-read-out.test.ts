import { describe, expect, test } from 'vitest';
import { readOut, sayReadOut } from '../../../src/report/staff-read-out.ts';
import { healthOf } from '../../../src/timeline/health.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { at } from '../../support/clean-swap.ts';
import { factsOfPair } from '../../support/pair-facts.ts';

const story = [
  '10:00:00 RO1 A role active',
  '10:00:00 RO1 B role standby',
  '10:00:00 RO1 A firmware 6.4.1',
  '10:00:00 RO1 B firmware 6.4.1',
  '10:00:00 RO1 partner ready',
  '10:00:00 RO1 B light steady',
  '10:10:00 RO1 B module removed',
  '10:10:00 RO1 partner not ready',
  '10:12:00 RO1 B module inserted',
  '10:12:00 RO1 B role standby',
  '10:12:00 RO1 B firmware 6.2.0',
  '10:12:00 RO1 B light flashing',
  '10:12:00 RO1 B link a down',
  '10:20:00 RO1 partner ready',
  '10:20:00 RO1 B light steady',
  '10:30:00 RO1 A link a up',
];

async function said(clock: string): Promise<string> {
  const { staff, spans } = healthOf(await factsOfPair(story), defaultRules);
  return sayReadOut(readOut(staff, spans, at(clock), 'UTC'));
}

describe('the read-out of the staff', () => {
  test('says of both halves what they were, and since when the partner was ready', async () => {
    expect(await said('10:05:00')).toBe(
      '14 Mar 2026 10:05:00; A: active, firmware 6.4.1; B: standby, ready, light steady, firmware 6.4.1; partner ready since the log began.',
    );
  });

  test('says what was not as it should be', async () => {
    // The bring-up began at 10:12; at 10:18 it is a minute past its five.
    expect(await said('10:18:00')).toBe(
      '14 Mar 2026 10:18:00; A: active, firmware 6.4.1; B: standby, not ready, light flashing, firmware 6.2.0, link a down; no ready partner since 14 Mar 2026 10:10:00; bring-up of B past five minutes; firmware differs.',
    );
  });

  test('says that a place is empty, and when the partner came back', async () => {
    expect(await said('10:11:00')).toMatch(/B: nothing in that place/);
    expect(await said('10:25:00')).toMatch(/; partner ready since 14 Mar 2026 10:20:00;/);
    expect(await said('10:30:00')).toMatch(/^14 Mar 2026 10:30:00; A: active/);
  });

  test('claims no more of a partner than was observed', () => {
    const staff = {
      from: 0,
      to: 9000,
      limitSeconds: 300,
      halves: ['A', 'B'],
      stretches: [
        { half: 'A', from: 0, to: 4000, drawn: 'active' as const },
        { half: 'B', from: 0, to: 4000, drawn: 'ready' as const },
        { half: 'A', from: 6000, to: 9000, drawn: 'active' as const },
        { half: 'B', from: 6000, to: 9000, drawn: 'ready' as const },
      ],
      lights: [],
      ticks: [],
      switchovers: [],
      bringUps: [],
      unobserved: [{ from: 4000, to: 6000 }],
      states: [
        {
          kind: 'unobserved' as const,
          half: null,
          from: 4000,
          to: 6000,
          seconds: 2,
          count: 1,
          losses: 0,
          goesOn: false,
        },
      ],
    };
    expect(readOut(staff, [], 5000, 'UTC')).toEqual({
      time: '1 Jan 1970 00:00:05',
      halves: ['A: unobserved', 'B: unobserved'],
      pair: [],
    });
    expect(readOut(staff, [], 7000, 'UTC').pair).toEqual([
      'partner ready at least since 1 Jan 1970 00:00:06',
    ]);
  });
});
