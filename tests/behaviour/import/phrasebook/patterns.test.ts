/**
 * Patterns on which backtracking engines hang. Source: OWASP, Regular expression Denial of Service, section "Evil Regexes"
 * (the first four; from memory); the others are the textbook forms of nested and overlapping repetition (from memory).
 */
import { performance } from 'node:perf_hooks';
import { describe, expect, test } from 'vitest';
import { compilePattern, patternList } from '../../../../src/import/phrasebook/patterns.ts';
import { readText } from '../../../support/read-text.ts';

const catastrophic: readonly (readonly [string, string])[] = [
  ['^(a+)+$', 'a'],
  ['^([a-zA-Z]+)*$', 'a'],
  ['^(a|aa)+$', 'a'],
  ['^(a|a?)+$', 'a'],
  ['(.*a){20}$', 'a'],
  ['^(([a-z])+.)+[A-Z]([a-z])+$', 'a'],
  ['(x+x+)+y', 'x'],
  ['^(\\w+\\s?)*$', 'a '],
  ['^(.*?,){11}P', '1,'],
  ['(a*)*b', 'a'],
  ['((a{0,20}){0,20}){0,2}b', 'a'],
];
/** What takes so long hangs: each takes below a second. */
const hangMs = 10_000;

async function timed(work: () => unknown): Promise<number> {
  const begin = performance.now();
  await work();
  return performance.now() - begin;
}

describe.each(catastrophic)('the pattern %s', (source, filler) => {
  const text = `${filler.repeat(10_000)}!`;

  test('does not hang on a long line that it does not fit', async () => {
    const pattern = compilePattern(source, true);
    if (typeof pattern === 'string') throw new Error(pattern);
    expect(await timed(() => pattern.match(text))).toBeLessThan(hangMs);
    const list = patternList([pattern, pattern]);
    expect(await timed(() => list.first(text))).toBeLessThan(hangMs);
    // Many texts later it is searched for in another way.
    for (let i = 0; i < 1_000; i += 1) list.first(`a${i}`);
    expect(await timed(() => list.first(text))).toBeLessThan(hangMs);
  });

  test('does not hang in any part of a phrasebook', async () => {
    const quoted = JSON.stringify(source);
    const phrasebook = [
      `messages: [{ when: ${quoted}, signal: fault }]`,
      `ignore: [${quoted}]`,
      `units: [{ pattern: ${quoted}, pair: RO1 }]`,
      '',
    ].join('\n');
    const cell = text.slice(-3000).replaceAll(',', ' ');
    const log = `time,unit,message\n2026-03-14T09:00:00Z,${cell},${cell}\n`;
    expect(await timed(() => readText('journal.csv', log, { phrasebook }))).toBeLessThan(hangMs);
  });
});

test.each(['(a)\\1', '(?=a)b', '(?<!a)b'])('what no such engine can do is refused: %s', (source) => {
  expect(compilePattern(source, true)).toEqual(expect.any(String));
});
