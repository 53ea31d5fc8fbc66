import { describe, expect, test } from 'vitest';
import { linkDown } from '../../../src/diagnose/link-down.ts';
import { checkCause, toldOf } from '../../support/check-cause.ts';

/**
 * Three attempts failed, and once the partner was ready. So at all of the failed ones and at none of the ready: (3.5 / 4) to
 * (0.5 / 2) is 3.5 to 1, which is 5.4 decibans, and what the state weighs before any count.
 */
checkCause(linkDown, {
  shows: {
    name: 'link a goes down seconds before each failure',
    plus: ['06:59:56', '07:02:08', '07:09:27', '07:12:38'].flatMap((at, index) => [
      `${at}  RO1 B  link a down`,
      `${['07:00:30', '07:02:30', '07:09:50', '07:13:00'][index]}  RO1 B  link a up`,
    ]),
    // Four windows of 30 s of the 3630 s from 06:59:30 on: 0.033, four times.
    for: [
      '4 of 4 losses and failed attempts came within 30 s after link-a of half B went down; chance alone would give 0.1.',
      'When an attempt last failed: link a of half B is down. This was so at 3 of 3 failed attempts and at 0 of 1 time with a ready partner.',
    ],
    against: ['At the end of the log: no link is reported as down.'],
    decibans: 30,
    lines: [
      '06:59:56 RO1 B link a down',
      '07:00:00 RO1 partner not ready',
      '07:02:08 RO1 B link a down',
      '07:02:10 RO1 B sync failed',
      '07:09:27 RO1 B link a down',
      '07:09:30 RO1 B sync failed',
      '07:12:38 RO1 B link a down',
      '07:12:40 RO1 B sync failed',
    ],
  },
  lookAlike: {
    name: 'link a goes down as often, at other times',
    plus: ['06:20', '07:03', '07:25', '07:40'].flatMap((at) => [
      `${at}:00  RO1 B  link a down`,
      `${at}:10  RO1 B  link a up`,
    ]),
    instead: 'too-little-data',
    against: ['No link is reported as down.'],
    lines: ['07:40:10 RO1 B link a up'],
  },
  tooLittle: { name: 'no link is logged', without: ['link a', 'link b'], names: 'link-a' },
});

describe('what a link shows', () => {
  const told = (...plus: readonly string[]): Promise<readonly unknown[]> =>
    toldOf({ without: ['sync'], plus }, 'link-down');
  /** Link a is down; the module is tried anew, and its sync fails so long after it came in. */
  const reseated = (failedAt: string): readonly string[] => [
    '06:58:00  RO1 B  link a down',
    '07:10:00  RO1 B  sync start',
    '07:12:00  RO1 B  sync failed',
    '07:20:00  RO1 B  module removed',
    '07:20:00  RO1    partner absent',
    '07:21:00  RO1 B  module inserted',
    '07:21:00  RO1    partner present',
    '07:21:00  RO1 B  link a up',
    `${failedAt}  RO1 B  sync failed`,
    '07:22:00  RO1 B  link a down',
  ];

  test('of a module that is in for seconds is no evidence against it', async () => {
    // One of one: (1.5 / 2) to (0.5 / 2) is 3 to 1, 4.8 decibans and 9.
    expect(await told(...reseated('07:21:07'))).toEqual([
      13.8,
      'Link a of half B is down. This was so at 1 of 1 failed attempt and at 0 of 1 time with a ready partner.',
    ]);
    // From 30 s on it is; states are read a moment before the end. (1.5 / 3) to (0.5 / 2) is 2 to 1, 3.0 decibans and 9.
    expect((await told(...reseated('07:21:30')))[0]).toBe(13.8);
    expect(await told(...reseated('07:21:30.001'))).toEqual([
      12,
      'Link a of half B is down. This was so at 1 of 2 failed attempts and at 0 of 1 time with a ready partner.',
      'Attempts failed without a link that is down: 1 time.',
    ]);
  });

  test('of an empty place, or while the module drops out, is no evidence for it', async () => {
    const out = [
      '07:10:00  RO1 B  module removed',
      '07:10:00  RO1 B  link a down',
      '07:10:00  RO1 B  link b down',
    ];
    expect((await told(...out))[0]).toBe('doubted');
    const drop = ['07:20:00  RO1    partner absent', '07:20:00  RO1 B  link a down'];
    const failed = ['07:18:00  RO1 B  sync start', '07:20:01  RO1 B  sync failed'];
    const back = ['07:20:09  RO1    partner present', '07:20:09  RO1 B  link a up'];
    expect((await told(...drop, ...failed, ...back))[0]).toBe('doubted');
  });
});
