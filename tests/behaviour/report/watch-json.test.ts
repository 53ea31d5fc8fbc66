import { describe, expect, test } from 'vitest';
import { documentedOf, standingOf, watchJson } from '../../../src/report/watch-json.ts';
import { changeLine, silentLine } from '../../../src/report/watch-lines.ts';
import { condition, newest, swapNowWith, swapWith } from '../../support/made-swap-now.ts';

describe('the document of watch', () => {
  test('is one line with the fields of design.md, section 8', () => {
    const text = watchJson(swapNowWith({ swap: swapWith({ verdict: 'not-verified' }) }));
    expect(text.indexOf('\n')).toBe(text.length - 1);
    const document = JSON.parse(text);
    expect(Object.keys(document)).toEqual([
      'schema',
      'at',
      'pair',
      'awaits',
      'since',
      'limitSeconds',
      'holdPoint',
      'conditions',
      'halves',
      'verdict',
    ]);
    expect(document).toMatchObject({
      schema: 'steadypair/watch/1',
      at: { time: '2026-03-14T09:18:45.000Z', earliest: '2026-03-14T09:18:45.000Z' },
      pair: 'RO1',
      awaits: 'ready',
      since: { time: '2026-03-14T09:16:08.000Z', earliest: '2026-03-14T09:16:08.000Z' },
      limitSeconds: 900,
      holdPoint: 'waiting',
      verdict: 'not-verified',
    });
    expect(document.conditions[1]).toEqual({
      id: 'ready',
      half: null,
      status: 'waiting',
      statement: 'The partner is not ready.',
      evidence: [{ file: 'logs/ro1-events.log', line: 31, text: '[RO1-B] light flashing' }],
    });
  });

  test('shows characters that are not seen by their codes', () => {
    const text = watchJson(swapNowWith({ pair: 'RO1\u202e\u0007' }));
    expect(text).toContain('RO1\\u202e\\u0007');
    expect(JSON.parse(text).pair).toBe('RO1\u202e\u0007');
  });
});

describe('a change', () => {
  const base = swapNowWith();
  const [roles] = base.holdPoint.conditions;
  const waiting = { ...base.holdPoint, conditions: [roles, condition('ready', 'met', 'Ready.')] } as const;
  test.each([
    ['the time that passes', { at: newest + 60_000 }, false, false],
    ['what the halves hold', { halves: [] }, false, true],
    ['what is awaited', { awaits: 'steady' }, true, true],
    ['the status of a condition', { holdPoint: waiting }, true, true],
    ['the verdict', { swap: swapWith({}) }, true, true],
  ] as const)('%s', (_, change, isStanding, isDocumented) => {
    const changed = { ...base, ...change };
    expect(standingOf(changed) !== standingOf(base)).toBe(isStanding);
    expect(documentedOf(changed) !== documentedOf(base)).toBe(isDocumented);
  });

  test('is told on one line', () => {
    expect(changeLine(base, 'Europe/Lisbon')).toBe(
      '14 Mar 2026 09:18:45  RO1: Waiting for half B to be ready, the limit is 15 min 00 s. ' +
        'Hold point before switchover to half B: waiting. The partner is not ready. Not met: ready; met: roles.',
    );
    expect(changeLine(swapNowWith({ pair: 'RO\n1' }), 'UTC')).toContain('RO‹000A›1');
  });

  test('silence is told with its habit', () => {
    expect(silentLine(base, newest + 30_000, 'UTC')).toBe(
      '14 Mar 2026 09:19:15  RO1: logs/ro1-poll.csv is silent: no row for longer than 30 s. The clock has stopped.',
    );
  });
});
