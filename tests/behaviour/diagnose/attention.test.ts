import { describe, expect, test } from 'vitest';
import { attention, diagnose } from '../../../src/pipeline.ts';
import type { Attention } from '../../../src/vocabulary.ts';
import { analyseTexts } from '../../support/read-text.ts';

const begin = Date.UTC(2026, 0, 1);
const day = 86_400_000;
const end = 100;

/** An entry so many days after the first. */
type Entry = readonly [days: number, unit: string, message: string];

/** A pair that is as it should be to the end, and known well enough to be fit for a swap. */
function sound(pair: string, to = end): readonly Entry[] {
  const halves: readonly Entry[] = ['A', 'B'].flatMap((half): readonly Entry[] => [
    [0, `${pair} ${half}`, 'firmware 6.4.1'],
    [0, `${pair} ${half}`, 'model Tern-4'],
  ]);
  return [
    [0, `${pair} A`, 'role active'],
    [0, `${pair} B`, 'role standby'],
    [0, pair, 'partner ready'],
    ...halves,
    [to, `${pair} A`, 'link a up'],
  ];
}

const minute = 1 / 1440;
const loss = (pair: string, at: number): readonly Entry[] => [
  [at, pair, 'partner not ready'],
  [at + 2 * minute, pair, 'partner ready'],
];

/** One pair for each reason; their names are in no order. */
const pairs: Readonly<Record<string, readonly Entry[]>> = {
  fine: sound('P01'),
  ended: sound('P02', 60),
  silent: [
    [0, 'P03 A', 'link a up'],
    [end, 'P03 A', 'link b up'],
  ],
  pending: [...sound('P04'), [90, 'P04', 'configuration pending']],
  swapped: [
    ...sound('P05'),
    [0, 'P05 B', 'serial T4-1'],
    [80, 'P05 B', 'module removed'],
    [80, 'P05', 'partner not ready'],
    [80 + 2 * minute, 'P05 B', 'module inserted'],
    [80 + 2 * minute, 'P05 B', 'role standby'],
    [80 + 2 * minute, 'P05 B', 'serial T4-2'],
    [80 + 2 * minute, 'P05 B', 'firmware 6.2.0'],
    [80 + 5 * minute, 'P05', 'partner ready'],
  ],
  flapping: [...sound('P06'), ...[9, 7, 5, 3, 1].flatMap((n) => loss('P06', end - n * 5 * minute))],
  often: [...sound('P07'), ...Array.from({ length: 9 }, (_, n) => loss('P07', 10 + n * 9)).flat()],
  conflict: [...sound('P08'), [90, 'P08 B', 'role active'], [90 + 10 * minute, 'P08 B', 'role standby']],
  endedDown: [...sound('P09', 60), [10, 'P09', 'partner not ready']],
  down: [...sound('P10'), [99, 'P10', 'partner not ready']],
};

/** Each pair in a file of its own, so that its log ends with it. */
async function ranked(stories: readonly (readonly Entry[])[]): Promise<readonly Attention[]> {
  const files = stories.map((entries, index): readonly [string, string] => {
    const rows = entries
      .toSorted((a, b) => a[0] - b[0])
      .map(
        ([days, unit, message]) =>
          `${new Date(Math.round(begin + days * day)).toISOString()},${unit},${message}\n`,
      );
    return [`${index}.csv`, `time,unit,message\n${rows.join('')}`];
  });
  const analysed = await analyseTexts(Object.fromEntries(files));
  const found = attention(analysed);
  // Without a name the pair that is diagnosed is never another one than the first of them that has trouble.
  expect(diagnose(analysed, null).pair).toBe(
    (
      found.find((a) => a.reasons.some((r) => ['not-ready', 'flapping', 'unknown'].includes(r.kind))) ??
      found[0]
    )?.pair,
  );
  return found;
}

const shortOf = (all: readonly Attention[]): readonly string[] =>
  all.map(({ pair, reasons }) => `${pair} ${reasons[0]?.kind ?? 'none'}`);

describe('the order of attention', () => {
  test('goes by the gravest reason of each pair, and of one kind what has no data to the end comes last', async () => {
    expect(shortOf(await ranked(Object.values(pairs)))).toEqual([
      'P10 not-ready',
      'P09 not-ready',
      'P08 critical',
      'P07 stands-out',
      'P06 flapping',
      'P05 not-verified',
      'P04 unfit',
      'P03 unknown',
      'P02 stale',
      'P01 none',
    ]);
  });

  test('says each reason in words, the gravest first', async () => {
    const all = await ranked(Object.values(pairs));
    const said = new Map(all.map(({ pair, reasons }) => [pair, reasons.map((r) => r.said)]));
    expect(said.get('P09')).toEqual(['no ready partner', 'no data up to the end of the logs']);
    expect(said.get('P08')?.[0]).toBe('critical: both halves were active for 10 min 00 s');
    expect(said.get('P07')?.[0]).toBe('loses its partner more often than the rest: 9 losses in 9 bouts');
    expect(said.get('P04')).toEqual(['not ready for a swap: a configuration is pending']);
    expect(said.get('P01')).toEqual([]);
  });

  test('of two without a ready partner the one that has been so for longer comes first', async () => {
    const lostAt = (pair: string, at: number): readonly Entry[] => [
      ...sound(pair),
      [at, pair, 'partner not ready'],
    ];
    expect(shortOf(await ranked([lostAt('P1', 99), lostAt('P2', 98)]))).toEqual([
      'P2 not-ready',
      'P1 not-ready',
    ]);
  });

  test('a critical finding of more than a month before the end of the log is history', async () => {
    const conflictAt = (at: number): readonly Entry[] => [
      ...sound('P1'),
      [at, 'P1 B', 'role active'],
      [at + 10 * minute, 'P1 B', 'role standby'],
    ];
    expect(shortOf(await ranked([conflictAt(71)]))).toEqual(['P1 critical']);
    expect(shortOf(await ranked([conflictAt(69)]))).toEqual(['P1 none']);
  });
});
