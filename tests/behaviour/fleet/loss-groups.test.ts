import { describe, expect, test } from 'vitest';
import { groupSpans } from '../../../src/fleet/group-spans.ts';
import { lossHistory } from '../../../src/fleet/pair-figures.ts';
import { fleetSentences } from '../../../src/report/fleet-sentences.ts';
import type { Fleet } from '../../../src/vocabulary.ts';
import { begin, day, daysFrom, firmwareFrom, lineOn, lossLog, reviewLogs } from '../../support/loss-logs.ts';
import { analyseTexts } from '../../support/read-text.ts';

const days = 400;
/** A pair that gets another firmware on day 200, with so many losses before and after; those of several pairs some days apart. */
const changing = (pair: string, before: number, after: number, apart = 0): string =>
  lossLog(
    pair,
    days,
    [...daysFrom(0, 200, before), ...daysFrom(200, days, after)].map((lost) => lost + apart),
    ...firmwareFrom(pair, 0, '6.2.0'),
    ...firmwareFrom(pair, 200, '6.4.1'),
  );
const groupsOf = ({ lossGroups }: Fleet): unknown =>
  lossGroups.map(({ group, pairs, bouts, observedSeconds }) => [
    group,
    pairs,
    bouts,
    observedSeconds / 86_400,
  ]);

describe('the firmware of a pair', () => {
  const spansOf = async (...lines: readonly string[]): Promise<unknown> => {
    const [facts] = (await analyseTexts({ 'x.log': `${lossLog('RO1', 10, [], ...lines)}\n` })).facts;
    if (facts === undefined) throw new Error('The log speaks of no pair.');
    return groupSpans(lossHistory(facts), 'firmware').map(({ group, from, to }) => [
      group,
      (from - begin) / day,
      (to - begin) / day,
    ]);
  };

  test('is that of both halves, else mixed', async () => {
    expect(
      await spansOf(
        ...firmwareFrom('RO1', 0, '6.2.0'),
        lineOn(4, 'RO1-B firmware 6.4.1'),
        lineOn(5, 'RO1-A firmware 6.4.1'),
      ),
    ).toEqual([
      ['6.2.0', 0, 4],
      ['mixed', 4, 5],
      ['6.4.1', 5, 10],
    ]);
  });

  test('is what the one half says of which alone it is known, and not known before', async () => {
    expect(await spansOf(lineOn(3, 'RO1-A firmware 6.2.0'))).toEqual([
      ['not known', 0, 3],
      ['6.2.0', 3, 10],
    ]);
  });
});

describe('losses by firmware', () => {
  test('count for the firmware of their time', async () => {
    const found = await reviewLogs([changing('RO1', 2, 3), changing('RO2', 1, 0)]);
    expect(groupsOf(found)).toEqual([
      ['6.2.0', 2, 3, 400],
      ['6.4.1', 2, 3, 400],
    ]);
    // Three bouts in 400 days of 365.25 to the year; Garwood (1936): limits of a count of 3 are 0.6187 and 8.7673.
    const [first] = found.lossGroups;
    expect(first?.ratePerYear?.value).toBeCloseTo((3 * 365.25) / 400, 9);
    expect(first?.ratePerYear?.low).toBeCloseTo((0.6187 * 365.25) / 400, 3);
    // By day 50 one of two pairs had one, by day 100 the other, by day 150 again the first.
    expect(first?.curve.map(({ days: by, pairs, mean }) => [by, pairs, mean])).toEqual([
      [50, 2, 0.5],
      [100, 2, 1],
      [150, 2, 1.5],
    ]);
  });

  test('differ where the same pairs lose their partner more often with the one', async () => {
    const found = await reviewLogs(
      ['RO1', 'RO2', 'RO3', 'RO4'].map((pair, index) => changing(pair, 1, 8, index)),
    );
    const [ratio, ...others] = found.lossRatios;
    expect(others).toEqual([]);
    expect([ratio?.group, ratio?.other, ratio?.pairsInBoth, ratio?.differs]).toEqual([
      '6.4.1',
      '6.2.0',
      4,
      true,
    ]);
    // Both for 200 days in every pair: 8 to 1.
    expect(ratio?.ratio.value).toBeCloseTo(8, 9);
    expect(fleetSentences(found)).toContain(
      'Pairs lose their partner 8.0 times as often with 6.4.1 as with 6.2.0, by 4 pairs that had both.',
    );
  });

  test('do not differ where it is one pair that does', async () => {
    const found = await reviewLogs([
      changing('RO1', 0, 20),
      ...['RO2', 'RO3', 'RO4'].map((pair, index) => changing(pair, 2, 2, index + 1)),
    ]);
    expect(found.lossRatios.map(({ differs, byOnePair }) => [differs, byOnePair])).toEqual([[false, 'RO1']]);
    expect(found.lossRatios[0]?.p).toBeLessThan(0.01);
    expect(fleetSentences(found)).toContain('Losses differ by firmware only because of RO1.');
  });

  test('do not differ where storms struck all pairs at once', async () => {
    const pairs = Array.from({ length: 8 }, (_, index) => `RO${index + 1}`);
    const found = await reviewLogs(
      pairs.map((pair, index) =>
        lossLog(
          pair,
          days,
          [250, 300, 350].map((storm) => storm + index / 400),
          ...firmwareFrom(pair, 0, '6.2.0'),
          ...firmwareFrom(pair, 200, '6.4.1'),
        ),
      ),
    );
    expect(groupsOf(found)).toEqual([
      ['6.2.0', 8, 0, 1600],
      ['6.4.1', 8, 24, 1600],
    ]);
    expect(found.lossRatios.map(({ differs }) => differs)).toEqual([false]);
  });

  test('by site compare all pairs of the one with all of the other', async () => {
    const found = await reviewLogs([changing('RO1', 1, 1)], 'site');
    expect(found.lossGroups.map(({ group, bouts }) => [group, bouts])).toEqual([['not known', 2]]);
    expect(found.lossRatios).toEqual([]);
  });
});
