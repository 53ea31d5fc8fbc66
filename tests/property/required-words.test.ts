/** A pattern is passed over only where it cannot fit: the words that it requires stand in every text that it fits. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainMessages } from '../../src/import/phrasebook/built-in-messages.ts';
import { noteMessages, plainUnits } from '../../src/import/phrasebook/built-in-phrasebook.ts';
import { patternCompiler, trustingCompiler } from '../../src/import/phrasebook/lazy-patterns.ts';
import { compilePattern, type Pattern } from '../../src/import/phrasebook/patterns.ts';
import { foldedCase, mayHold, requiredWords } from '../../src/import/phrasebook/required-words.ts';

const letters = ['a', 'b', 'ab', 'K', ' ', '-', '7'];
const pieces = fc.constantFrom(
  ...letters,
  ...['.', '\\w', '\\b', '^', '$', '[ab]', '[^b]', '[[:alpha:]b]', '[]ab]', '\\.', '\\Qa+\\E', '\\x61'],
  ...['*', '+', '?', '+?', '*?', '{0}', '{2}', '{,2}', '{0,1}', '|'],
  ...['(', '(?:', '(?<n>', '(?i)', '(?-i:', ')', ')?', ')*', ')+', '){0,2}'],
);
const compiled = fc
  .array(pieces, { minLength: 1, maxLength: 9 })
  .map((all) => all.join(''))
  .map((source) => ({ source, pattern: compilePattern(source, true) }))
  .filter((one): one is { source: string; pattern: Pattern } => typeof one.pattern !== 'string');
// U+017F and U+212A are alike to s and k where case makes no difference (Unicode, CaseFolding.txt, status C; from memory).
const texts = fc
  .array(fc.constantFrom(...letters, 'B', 'k', '\u212a', '.', ',', '{', '}', ']', '+', 'i'), { maxLength: 8 })
  .map((all) => all.join(''));

describe('what a pattern requires', () => {
  test('stands in each text that it fits', () => {
    const seen = { fits: 0, passedOver: 0 };
    fc.assert(
      fc.property(compiled, fc.array(texts, { minLength: 5, maxLength: 5 }), ({ source, pattern }, all) => {
        for (const text of all) {
          const may = mayHold(foldedCase(text), requiredWords(source));
          const fits = pattern.match(text) !== null;
          if (!may) seen.passedOver += 1;
          if (fits && requiredWords(source).length > 0) seen.fits += 1;
          expect(may || !fits, `${source} on ${JSON.stringify(text)}`).toBe(true);
        }
      }),
      { numRuns: 8_000, seed: 21 },
    );
    expect(seen.fits).toBeGreaterThan(1_000);
    expect(seen.passedOver).toBeGreaterThan(1_000);
  }, 120_000);

  test.each([
    ['partner (?:ready|not ready)', ['partner ']],
    ['(?:light|led)[ _]on', ['light', 'led']],
    ['(?:the )?(?:light|led) steady', [' steady']],
    ['(?:light|led)?', []],
    ['light|', []],
    ['light|(?:sync|synchronisation) failed', ['light', ' failed']],
    ['(?i)\\w', []],
    ['[[:digit:]x]', []],
    ['Door{0}', ['doo']],
    ['(?:abc){0}d', ['d']],
  ])('of %s is known', (source, words) => {
    expect(requiredWords(source)).toEqual(words);
  });
});

describe('the patterns that come with the program', () => {
  const sources = [...plainMessages, ...noteMessages].map(({ when }) => when);
  const all = [
    ...sources.map((source) => [source, true] as const),
    ...plainUnits.map(({ pattern }) => [pattern, false] as const),
  ];
  test.each(all)(
    'are valid, and their groups are known before they are compiled: %s',
    (source, ignoreCase) => {
      const [trusted, doubted] = [trustingCompiler(), patternCompiler()].map((compile) =>
        compile(source, ignoreCase),
      );
      const plain = compilePattern(source, ignoreCase);
      if (typeof plain === 'string' || typeof trusted !== 'object' || typeof doubted !== 'object')
        throw new Error(`${source}: ${String(plain)}`);
      expect(trusted.groups).toEqual(plain.groups);
      expect(doubted.groups).toEqual(plain.groups);
    },
  );
});
