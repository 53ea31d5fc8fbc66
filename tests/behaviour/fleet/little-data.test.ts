import { describe, expect, test } from 'vitest';
import { fleet } from '../../../src/pipeline.ts';
import { fleetJson } from '../../../src/report/fleet-json.ts';
import { fleetText } from '../../../src/report/fleet-text.ts';
import type { Fleet } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../../support/read-text.ts';

async function review(...lines: readonly string[]): Promise<Fleet> {
  const text = lines.map((line) => `2026-03-14T${line}\n`).join('');
  return fleet(await analyseTexts({ 'x.log': text }), { by: 'firmware', swaps: 10 });
}

/** The review as text and JSON; fails where either holds no figure where one should be. */
function saidOf(found: Fleet): string {
  const text = fleetText(found, { zone: 'UTC', paint: (words) => words, reports: [] });
  expect(text).not.toMatch(/NaN|Infinity|undefined|null/);
  expect(fleetJson(found)).not.toMatch(/NaN|Infinity|undefined/);
  return text;
}

const rest = (pair: string, firmware = '6.2.0'): readonly string[] => [
  `09:00:00Z ${pair}-A role active`,
  `09:00:00Z ${pair}-B role standby`,
  `09:00:00Z ${pair}-B firmware ${firmware}`,
  `09:00:00Z ${pair} partner ready`,
];
const restart = (pair: string, minute: string): readonly string[] => [
  `10:${minute}:00Z ${pair}-B module restart`,
  `10:${minute}:01Z ${pair} partner not ready`,
];

describe('a fleet with little data', () => {
  test('of no pair is said to be of none', async () => {
    const found = await review('09:00:00Z hello world');
    expect([found.pairs, found.groups, found.months, found.census, found.forecast]).toEqual([
      [],
      [],
      [],
      [],
      null,
    ]);
    saidOf(found);
  });

  // A stamp without decimals stands for a second: 80 s from one to the other are at most 81 s.
  test('of one attempt has its time and says how many a limit needs', async () => {
    const found = await review(
      ...rest('RO1'),
      ...restart('RO1', '00'),
      '10:01:20Z RO1 partner ready',
      '12:00:00Z RO1-A light off',
    );
    expect(found.groups.map((g) => [g.attempts, g.censored, g.median.value, g.median.high])).toEqual([
      [1, 0, 81, null],
    ]);
    expect(found.groups.map((g) => [g.tolerance9595, g.neededFor9595])).toEqual([[null, 59]]);
    saidOf(found);
  });

  test('of attempts that were not seen to end has no median', async () => {
    const found = await review(
      ...rest('RO1'),
      ...restart('RO1', '00'),
      ...restart('RO1', '20'),
      '10:40:00Z RO1-A light off',
    );
    // The second restart supersedes the first; the log ends while the second is awaited.
    expect(
      found.groups.map((g) => [g.attempts, g.superseded, g.censored, g.median.value, g.survival]),
    ).toEqual([[2, 1, 1, null, []]]);
    expect(saidOf(found)).toContain('not enough data (n = 2');
  });

  test('of polled attempts that were not seen to end has no median either', async () => {
    const polled = ['09:00', '09:10', '09:20', '09:30'].map(
      (at, index) => `2026-03-14T${at}:00Z,RO1,partner-ready,${index === 0 ? 'yes' : 'no'}`,
    );
    const poll = ['time,unit,parameter,value', ...polled].join('\n');
    const journal = '2026-03-14T09:05:00Z RO1-B module restart\n2026-03-14T09:00:00Z RO1-A role active\n';
    const found = fleet(await analyseTexts({ 'poll.csv': `${poll}\n`, 'x.log': journal }), {
      by: 'firmware',
      swaps: 1,
    });
    expect(found.groups.map((g) => [g.attempts, g.censored, g.median.value])).toEqual([[1, 1, null]]);
    saidOf(found);
  });

  test('of a pair seen at one instant only has no rate: what was seen is said', async () => {
    const found = await review('09:00:00Z RO1 partner ready');
    expect(found.pairs.map((p) => [p.observedSeconds, p.ratePerYear, p.p, p.availability])).toEqual([
      [0, null, null, null],
    ]);
    expect(saidOf(found)).toContain('RO1 no loss in less than 1 s');
  });

  test('of a pair seen for an hour says no rate, and does not know whether it is fit', async () => {
    const found = await review(
      ...rest('RO1'),
      '09:20:00Z RO1 partner not ready',
      '09:21:00Z RO1 partner ready',
      '10:45:00Z RO1-A light off',
    );
    const [only] = found.pairs;
    expect([only?.ratePerYear, only?.rank, only?.standsOut, only?.trend.comesCloser]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect([only?.losses, only?.bouts, only?.change]).toEqual([1, 1, null]);
    expect(saidOf(found)).toContain('1 loss in 1 h 45 min');
    expect(only?.readiness.reasons).toContain('Its log covers only 1 h 45 min.');
  });

  test('with two names for one release keeps them apart and says so', async () => {
    const found = await review(
      ...rest('RO1', '6.4.1'),
      ...rest('RO2', 'V6.4.1'),
      ...['RO1', 'RO2'].flatMap((pair) => [...restart(pair, '00'), `10:02:00Z ${pair} partner ready`]),
      '12:00:00Z RO1-A light off',
    );
    expect(found.groups.map((g) => g.group)).toEqual(['6.4.1', 'V6.4.1']);
    expect(found.alike).toEqual([['6.4.1', 'V6.4.1']]);
  });
});
