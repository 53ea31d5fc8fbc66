/** Readings that stay away for a while: both lanes must come to the same. */

import { describe, expect, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { allChanges } from '../../src/changes.ts';
import { compare } from '../support/compare-lanes.ts';
import { calm, longPoll, type Stretch } from '../support/long-polls.ts';
import { clock, stamps } from '../support/odd-polls.ts';
import { readText } from '../support/read-text.ts';

describe('the fast lane comes to what the general one comes to', () => {
  test('with readings that stay away for a while or for good, or come seldom', async () => {
    const random = seeded(28);
    const long = { cycles: 400 };
    const stories: (readonly Partial<Stretch>[])[] = [
      [long, { blank: true, cycles: 2 }, { blank: true, cycles: 3 }, long],
      [
        long,
        { blank: true, cycles: 4 },
        long,
        { blank: true, cycles: 40 },
        { cycles: 1 },
        { blank: true },
        long,
      ],
      [long, { blank: true }],
      [{ ...long, every: 2 }, { ...long, every: 5 }, { ...long, every: 60 }, long],
      [{ every: 5, cycles: 2000 }],
      [{ every: 5, blank: true, cycles: 3 }, { every: 5 }, { every: 30 }, { every: 5, gap: 0.02 }],
      [
        { every: 60, spacing: 4 },
        { spacing: 60, every: 4 },
        { spacing: 4, every: 60 },
      ],
      [
        { ...long, stagger: 3 },
        { stagger: 3, blank: true, cycles: 6, gap: 0.4 },
        { ...long, stagger: 3, gap: 0.02 },
      ],
      [long, { spacing: 60, cycles: 30 }, { blank: true, spacing: 60, cycles: 8 }, { spacing: 60 }],
      [long, { blank: true, cycles: 20, change: 0.5 }, { cycles: 20, change: 0.5 }, long],
      [long, { blank: true, cycles: 30, setBack: 250 }, { setBack: 100 }, { blank: true, cycles: 9 }, long],
      [long, { blank: true, cycles: 30, quoted: 0.2, part: 0.2 }, { twice: 0.1, between: 0.3 }],
    ];
    // What is polled apart from the rest comes round by itself: the whole of it stays away, or comes seldom.
    const apart = { ahead: -1, cycles: 600, lead: true };
    const never = 1e9;
    stories.push(
      [
        apart,
        { ...apart, aheadEvery: 20, cycles: 60 },
        apart,
        { ...apart, aheadEvery: never, cycles: 50 },
        apart,
      ],
      [apart, { ...apart, aheadEvery: 2 }, { ...apart, aheadEvery: 3 }, { ...apart, aheadEvery: 4 }],
      [{ ...apart, aheadEvery: 4 }, apart, { ...apart, aheadEvery: 4 }],
      [
        { ...apart, spacing: 60 },
        { ...apart, aheadEvery: 4 },
        { ...apart, aheadEvery: 9 },
      ],
      [
        { ...apart, spacing: 100 },
        { ...apart, aheadEvery: 10, cycles: 6000 },
      ],
      [
        { ...apart, ahead: 4 },
        { ...apart, ahead: 4, aheadEvery: 50, cycles: 60 },
        { ...apart, ahead: 4, gap: 0.05 },
      ],
    );
    let resumed = 0;
    for (const story of stories)
      for (const units of [1, 2, 7]) {
        const stretches = story.map((s) => ({ ...calm, ...s }));
        const text = longPoll(stamps.utc ?? clock, stretches, units, random);
        await compare(text, 65_536, 20_011, 4_000_000);
        const { changes } = await readText('poll.csv', text);
        resumed += allChanges(changes).filter(
          ({ before, value }) => before !== null && before === value,
        ).length;
      }
    expect(resumed).toBeGreaterThan(100);
  }, 120_000);

  test('with columns of snapshots that are blank for a while, for good, or now and then', async () => {
    for (const isBlank of [
      (i: number) => i >= 30 && i < 33,
      (i: number) => i >= 30 && i < 34,
      (i: number) => i >= 30,
      (i: number) => i % 7 !== 0,
      (i: number) => i < 30,
      (i: number) => i % 40 > 30 || i % 3 === 1,
    ]) {
      const rows = Array.from({ length: 400 }, (_, i) => {
        const at = (stamps.plain ?? clock)(i * 10 + (i > 200 ? 90 : 0));
        const [light, ready] = [isBlank(i) ? '' : 'steady', isBlank(i + 3) ? '' : 'yes'];
        return `${at},RO1-A,${light},${ready},6.2.0,${isBlank(i) ? '' : 40}\n${at},RO1-B,off,yes,${isBlank(i) ? '' : '6.2.0'},40`;
      });
      await compare(['time,unit,light,partner-ready,firmware,load', ...rows, ''].join('\n'), 65_536, 61);
    }
  }, 60_000);
});
