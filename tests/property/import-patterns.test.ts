/** The fast search for a message rule agrees with the plain one: every pattern in its turn. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compilePattern, type Pattern, patternList } from '../../src/import/phrasebook/patterns.ts';
import { readPhrasebook } from '../../src/import/read-phrasebook.ts';

function plainly(patterns: readonly Pattern[], text: string): unknown {
  for (const [index, pattern] of patterns.entries()) {
    const groups = pattern.match(text);
    if (groups !== null) return { index, groups };
  }
  return null;
}

function compiled(sources: readonly string[]): readonly Pattern[] {
  return sources.map((source) => {
    const pattern = compilePattern(source, true);
    if (typeof pattern === 'string') throw new Error(pattern);
    return pattern;
  });
}

const words = [
  'partner',
  'ready',
  'not',
  'light',
  'steady',
  'supply',
  'fault',
  'link',
  'a',
  'up',
  'firmware',
  '6.4.1',
];
const parts = fc.constantFrom(
  ...words,
  'switchover',
  'command',
  'removed',
  'reflash',
  'end',
  'xpartner',
  'READY',
  'é',
  '\\b',
);
const anyWords = fc
  .array(fc.tuple(parts, fc.constantFrom(' ', '-', ': ', '_', '')), { maxLength: 7 })
  .map((all) => all.flat().join(''));
const sentence = fc.constantFrom(
  'partner ready',
  'Light Steady',
  'link-a up',
  'module removed',
  'firmware 6.4.1',
);
const texts = fc.oneof(
  anyWords,
  fc.tuple(fc.constantFrom('', 'RO1-B: ', 'not '), sentence, anyWords).map((all) => all.join('')),
);

describe('the first pattern that fits', () => {
  const phrasebook = readPhrasebook('', null);
  test.each(['plainMessages', 'notes'] as const)('of the built-in %s is found', (rules) => {
    const patterns = phrasebook[rules]().map((r) => r.pattern);
    const list = patternList(patterns);
    let found = 0;
    fc.assert(
      fc.property(texts, (text) => {
        const first = list.first(text);
        if (first !== null) found += 1;
        expect(first).toEqual(plainly(patterns, text));
      }),
      { numRuns: 1_000, seed: 3 },
    );
    expect(found).toBeGreaterThan(50);
  });

  test('is found where boundaries, quoted text and anchors stand in the patterns', () => {
    const patterns = compiled([
      '\\bab\\b',
      '^\\Ba',
      '\\Qa\\b\\E',
      'a\\\\b',
      '(?:\\b)+ab',
      '[\\]b]a$',
      '(?<value>b+)',
    ]);
    const list = patternList(patterns);
    const any = fc
      .array(fc.constantFrom('a', 'b', '\\', ']', ' ', 'ab'), { maxLength: 6 })
      .map((all) => all.join(''));
    fc.assert(
      fc.property(any, (text) => {
        expect(list.first(text)).toEqual(plainly(patterns, text));
      }),
      { numRuns: 2_000, seed: 4 },
    );
  });
});
