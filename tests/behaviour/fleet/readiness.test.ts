import { describe, expect, test } from 'vitest';
import { readinessForSwap, standingOf } from '../../../src/fleet/readiness.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { pollText } from '../../support/clean-swap.ts';
import { factsOfPair, type Told } from '../../support/pair-facts.ts';
import { journalText } from '../../support/read-text.ts';

const states = (clock: string): readonly string[] => [
  `${clock} RO1 partner ready`,
  `${clock} RO1 configuration current`,
  ...['A', 'B'].flatMap((half) => [
    `${clock} RO1 ${half} role ${half === 'A' ? 'active' : 'standby'}`,
    `${clock} RO1 ${half} firmware 6.4.1`,
    `${clock} RO1 ${half} model Tern-4`,
    `${clock} RO1 ${half} link a up`,
    `${clock} RO1 ${half} link b up`,
  ]),
];
const end = '11:00:00 RO1 A light off';

/** Why a pair is not fit when its log ends at 11:00:00; it must have been ready, and seen, for the half hour before. */
async function reasons(told: Told): Promise<readonly string[]> {
  const { fit, reasons: found } = readinessForSwap(
    standingOf(await factsOfPair(told), defaultRules),
    1_800_000,
  );
  // What must be known and was never logged speaks neither for it nor against it.
  const isUnknown = found.every((reason) => /not known|never logged|covers/.test(reason));
  expect(fit).toBe(found.length === 0 ? true : isUnknown ? null : false);
  return found;
}
const following = (...lines: readonly string[]): Promise<readonly string[]> =>
  reasons([...states('10:00:00'), ...lines, end]);

describe('a pair is fit for a swap', () => {
  test('with nothing against it', async () => {
    expect(await reasons([...states('10:00:00'), end])).toEqual([]);
  });

  test('but not without a ready partner, or with a loss in the half hour before', async () => {
    const lost = (from: string): readonly string[] => [
      `${from} RO1 partner not ready`,
      '10:40:00 RO1 partner ready',
    ];
    expect(await reasons([...states('10:00:00'), ...lost('10:30:00'), end])).toEqual([]);
    expect(await reasons([...states('10:00:00'), ...lost('10:30:00.001'), end])).toEqual([
      'It lost its ready partner within the last 30 min 00 s.',
    ]);
    expect(await following('10:10:00 RO1 partner not ready')).toEqual(['It has no ready partner.']);
  });

  test('but not while its standby is flapping', async () => {
    const losses = ['10:20', '10:22', '10:24'].flatMap((m) => [
      `${m}:00 RO1 partner not ready`,
      `${m}:20 RO1 partner ready`,
    ]);
    // The penalty of 2.7 at 10:24 is down to 0.75 some 28 minutes later.
    expect(await reasons([...states('10:00:00'), ...losses, '10:51:00 RO1 A light off'])).toContain(
      'Its standby is flapping.',
    );
    expect(await reasons([...states('10:00:00'), ...losses, end])).toEqual([]);
  });

  test('but not where firmware or models differ, or are not known of a half', async () => {
    // Another model is another module, whose firmware no line tells.
    expect(await following('10:05:00 RO1 B model Tern-2')).toEqual([
      'The firmware of half B is not known.',
      'The model of its halves differs: Tern-4 and Tern-2.',
    ]);
    const without = (part: string): readonly string[] =>
      states('10:00:00').filter((line) => !line.includes(part));
    expect(await reasons([...without('B firmware'), end])).toEqual(['The firmware of half B is not known.']);
    expect(await reasons([...without('A model'), end])).toEqual(['The model of half A is not known.']);
    expect(await reasons([...without('model'), end])).toEqual(['The model of its halves is not known.']);
  });

  test('but not with a configuration pending or a link down', async () => {
    expect(
      await following(
        '10:05:00 RO1 configuration pending',
        '10:06:00 RO1 A link b down',
        '10:06:00 RO1 B link a down',
      ),
    ).toEqual(['A configuration is pending.', 'Link b of half A is down.', 'Link a of half B is down.']);
  });

  test('but not on a log of less than half an hour', async () => {
    expect(await reasons([...states('10:30:00'), end])).toEqual([]);
    expect(await reasons([...states('10:31:00'), end])).toEqual(['Its log covers only 29 min 00 s.']);
  });

  test('but not where it was not observed for a while in the half hour before', async () => {
    const story = (gap: readonly [string, string]): Told => ({
      'poll.csv': pollText(
        ['10:00:00', '11:00:00'],
        10,
        [['RO1', 'partner-ready', ['10:00:00', 'yes']]],
        [gap],
      ),
      'ro1.log': journalText(
        [...states('10:00:00').filter((line) => !line.includes('partner ready')), end].join('\n'),
      ),
    });
    expect(await reasons(story(['10:20:10', '10:29:50']))).toEqual([]);
    expect(await reasons(story(['10:20:10', '10:30:00']))).toEqual([
      'It was not observed throughout the last 30 min 00 s.',
    ]);
  });
});
