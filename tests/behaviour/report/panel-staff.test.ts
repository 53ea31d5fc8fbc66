import { describe, expect, test } from 'vitest';
import { staffKey, staffLine } from '../../../src/report/panel-staff.ts';
import { newest, staffFor } from '../../support/made-swap-now.ts';

describe('the staff of the last hour in text', () => {
  test('has a key that fits 80 columns', () => {
    for (const line of staffKey) expect(line.length).toBeLessThanOrEqual(80);
  });

  const minute = 60_000;
  const part = (
    half: string,
    from: number,
    to: number,
    drawn: 'active' | 'ready' | 'not-ready' | 'absent',
  ) => ({
    half,
    from: newest - from * minute,
    to: newest - to * minute,
    drawn,
  });

  // 61 characters: a minute each, and the end.
  test('draws a character a minute and grows to the right', () => {
    const staff = staffFor(20, {
      stretches: [
        part('A', 20, 0, 'active'),
        part('B', 20, 12, 'ready'),
        part('B', 12, 8, 'absent'),
        part('B', 8, 0, 'not-ready'),
      ],
    });
    expect(staffLine(staff, 'A', 61)).toBe('====================>');
    expect(staffLine(staff, 'B', 61)).toBe('--------    ........>');
  });

  test('of a longer staff the last hour is drawn', () => {
    const staff = staffFor(90, { stretches: [part('A', 90, 60, 'absent'), part('A', 60, 0, 'active')] });
    expect(staffLine(staff, 'A', 61)).toBe(`${'='.repeat(60)}>`);
  });

  test('a loss that is shorter than a character is not hidden', () => {
    const staff = staffFor(4, {
      stretches: [part('B', 4, 2.5, 'ready'), part('B', 2.5, 2.4, 'not-ready'), part('B', 2.4, 0, 'ready')],
    });
    expect(staffLine(staff, 'B', 61)).toBe('-.-->');
  });

  test('marks happenings, switchovers and what was not observed', () => {
    const at = (ago: number) => ({ time: newest - ago * minute, earliest: newest - ago * minute });
    const staff = staffFor(10, {
      stretches: [part('A', 10, 0, 'active'), part('B', 10, 0, 'ready')],
      ticks: [
        { ...at(9), half: 'B', word: 'restart' },
        { ...at(0), half: 'B', word: 'fault' },
      ],
      switchovers: [{ ...at(7), fromHalf: 'A', toHalf: 'B' }],
      unobserved: [{ from: newest - 4 * minute, to: newest - 2 * minute }],
    });
    expect(staffLine(staff, 'A', 61)).toBe('===X==//==>');
    expect(staffLine(staff, 'B', 61)).toBe('-|-X--//-|>');
  });
});
