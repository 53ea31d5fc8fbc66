import { describe, expect, test } from 'vitest';
import { holdPoints, table, withHalf } from '../../../src/procedure/table.ts';
import { atRest, cleanWork, nowOf } from '../../support/swap-now.ts';

describe('the table of a swap', () => {
  test('has the steps in the order of the work, with the limits and hold points of the contract', () => {
    // Source: design.md, section 5: in 15 min, identified 15, reflash 15, ready 15, steady 300 s, second half 24 h, soak 30 min.
    expect(table.map(({ id, limitSeconds, holdPoint }) => [id, limitSeconds, holdPoint])).toEqual([
      ['baseline', 900, null],
      ['out', null, 'removal'],
      ['in', 900, null],
      ['identified', 900, null],
      ['reflash', 900, null],
      ['synchronising', null, null],
      ['ready', 900, null],
      ['steady', 300, null],
      ['switchover', null, 'switchover'],
      ['second-half', 86_400, null],
      ['soak', 1800, 'leaving'],
    ]);
  });

  test('names the half in every text about one', () => {
    for (const { title, of } of table) expect(title.includes('{half}')).toBe(of === 'half');
    expect(withHalf('Insert the new module in half {half}.', 'B')).toBe('Insert the new module in half B.');
  });

  test('lists what each hold point asks: what is looked at is what the sheet says', async () => {
    const removal = await nowOf([...atRest, '08:56:00 RO1 A link a up']);
    expect(removal.holdPoint.conditions.map((c) => c.id)).toEqual(
      holdPoints.removal.flatMap((asked) => ('isOfSecond' in asked ? [] : [asked.id])),
    );
    const switchover = await nowOf([...atRest, ...cleanWork.slice(0, 4)]);
    expect(switchover.holdPoint.conditions.map((c) => c.id)).toEqual(holdPoints.switchover.map((c) => c.id));
    const leaving = await nowOf([...atRest, ...cleanWork]);
    expect(leaving.holdPoint.id).toBe('leaving');
    const asked = holdPoints.leaving.map((c) => c.id).filter((id) => id !== 'verdict');
    expect(leaving.holdPoint.conditions.map((c) => c.id)).toEqual(expect.arrayContaining(asked));
  });

  test('says nowhere that anyone may go on', () => {
    const texts = [
      ...table.map((s) => s.title),
      ...Object.values(holdPoints)
        .flat()
        .map((a) => a.asks),
    ];
    for (const text of texts) expect(text).not.toMatch(/\b(go|OK|safe|may)\b/i);
  });
});
