/** Messages that differ in their digits alone are read once for all, where that is right: as each of them is read by itself. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { digitShape, digitTest } from '../../src/import/phrasebook/digit-shapes.ts';
import { entryReader } from '../../src/import/phrasebook/entries.ts';
import { compilePattern } from '../../src/import/phrasebook/patterns.ts';
import { readPhrasebook } from '../../src/import/read-phrasebook.ts';
import { compareWith } from '../support/compare-lanes.ts';
import { clock, stamps } from '../support/odd-polls.ts';

/** Rules that take any digit, rules that tell them apart, and rules that only seem to. */
const phrasebook = `
messages:
  - { when: '^door (?<half>\\d) open$', signal: note }
  - { when: '^loop 7 fault', signal: fault }
  - { when: '^pump \\d{3} tripped', signal: note }
  - { when: 'slot [0-4] swapped', signal: note, only: { unit: '^RO1' } }
  - { when: '^lamp (?<value>\\w+) lit$', signal: light, values: { '11': steady } }
ignore:
  - '^login of operator \\d+'
  - 'tick 0+5$'
  - '^level [[:digit:]]+%'
  - '^unit RO3'
`;

const wordings = [
  'login of operator #',
  'logon of operator #',
  'door # open',
  'loop # fault',
  'pump # tripped',
  'slot # swapped',
  'lamp # lit',
  'tick #',
  'level #% of #',
  'partner ready #',
  'partner ready: #',
  'firmware 6.#',
  'half # removed',
  'RO1-#: #',
  'nothing of note',
];
const number = fc.oneof(fc.constantFrom('7', '0', '1', '11', '005', '5'), fc.nat(99_999).map(String));
const messages = fc
  .tuple(fc.constantFrom(...wordings), fc.array(number, { minLength: 2, maxLength: 2 }))
  .map(([wording, numbers]) =>
    numbers.reduce((text, one) => text.replace('#', one), wording).replaceAll('#', '3'),
  );

describe('messages that hold numbers', () => {
  test('mean in their turn what each means to a reader that read none before', () => {
    let alike = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(messages, fc.constantFrom('RO1-A', 'RO2-B')), { minLength: 10, maxLength: 40 }),
        (rows) => {
          const book = readPhrasebook('phrasebook.yaml', phrasebook);
          const reader = entryReader(book);
          const subject = { pair: 'RO1', half: 'A', role: null } as const;
          for (const [message, unit] of rows) {
            const row = { unit, isOff: false, value: '', against: null } as const;
            if (!reader.digitsMatter(message, unit)) alike += 1;
            expect(reader.read(subject, message, row)).toEqual(entryReader(book).read(subject, message, row));
          }
        },
      ),
      { numRuns: 30, seed: 11 },
    );
    expect(alike).toBeGreaterThan(10);
  }, 120_000);

  test('come in both lanes to the same', async () => {
    const random = seeded(29);
    const pick = <T>(of: readonly T[]): T | undefined => of[Math.floor(random() * of.length)];
    for (const [stamp, end, header] of [
      [stamps.utc ?? clock, '\n', 'time,unit,message'],
      [stamps.plain ?? clock, '\r\n', 'time,unit,message,state'],
      [stamps.european ?? clock, '\n', 'time,message,unit'],
    ] as const) {
      const rows = Array.from({ length: 2_000 }, (_, i) => {
        const digits = String(Math.floor(random() * 10 ** (1 + Math.floor(random() * 4))));
        const numbered = (pick(wordings) ?? '').replaceAll('#', digits);
        const message =
          random() < 0.02 ? `"${numbered}"` : random() < 0.02 ? `${numbered} ä\u0660` : numbered;
        const unit = pick(['RO1-A', 'RO1-B', 'RO2-A', 'RO3', `P${i % 3}`, '']) ?? '';
        const cells = { time: stamp(i * 400), unit, message, state: pick(['on', 'off', '4', '7']) ?? '' };
        return header
          .split(',')
          .map((key) => Object.entries(cells).find(([name]) => name === key)?.[1])
          .join(',');
      });
      await compareWith({ phrasebook }, [header, ...rows, ''].join(end), 65_536, 997);
    }
  }, 120_000);
});

const pieces = fc.constantFrom(
  ...[
    'a',
    'B',
    ' ',
    '0',
    '7',
    '\\d',
    '\\D',
    '\\w',
    '\\W',
    '.',
    '[0-9]',
    '[^0-9]',
    '[0-4]',
    '[ab0-9]',
    '[+-0-9]',
  ],
  ...[
    '[[:digit:]]',
    '[[:digit:]{3}]',
    '[]0-9]',
    '{2}',
    '{1,2}',
    '*',
    '+?',
    '|',
    '(?:',
    ')',
    '(?<n1>',
    '\\b',
    '^',
    '$',
  ],
  ...['\\{2}', '{,2}', '\\x31', '\\Qa{2}\\E', '[!-~]', '[a7]', '\\pN', '\\07'],
);
const patterns = fc
  .array(pieces, { minLength: 1, maxLength: 7 })
  .map((all) => all.join(''))
  .map((source) => ({ source, pattern: compilePattern(source, true) }))
  .filter(({ pattern }) => typeof pattern !== 'string');
const shapedTexts = fc
  .array(fc.constantFrom('a', 'b', ' ', '{', '}', ',', '0', '00', '000'), { maxLength: 8 })
  .map((all) => all.join(''));

describe('a pattern that takes all digits alike', () => {
  test('fits all texts of a shape, or none', () => {
    let blind = 0;
    let fitted = 0;
    fc.assert(
      fc.property(
        patterns,
        shapedTexts,
        fc.array(fc.nat(9), { minLength: 24, maxLength: 24 }),
        (one, shape, digits) => {
          const { source, pattern } = one;
          if (typeof pattern === 'string' || digitTest([source])(shape)) return;
          const text = [...shape].map((c, at) => (c === '0' ? String(digits[at] ?? 9) : c)).join('');
          const [first, second] = [pattern.match(shape), pattern.match(text)];
          blind += 1;
          if (first !== null && /\d/.test(shape)) fitted += 1;
          expect(digitShape(text)).toBe(shape);
          expect(second === null).toBe(first === null);
          for (const [name, value] of Object.entries(first ?? {}))
            expect(digitShape(second?.[name] ?? '')).toBe(value);
        },
      ),
      { numRuns: 4_000, seed: 12 },
    );
    expect(blind).toBeGreaterThan(500);
    expect(fitted).toBeGreaterThan(50);
  }, 120_000);

  test.each([
    ['^login of operator \\d+', 'login of operator 0', false],
    ['^loop 7 fault', 'loop 0 fault', true],
    ['^loop 7 fault', 'pump 0 fault', false],
    ['(?<value>yes|no|1|0)', 'any text', false],
    ['(?<value>yes|no|1|0)', 'any 00', true],
    ['lamp[0-4]', 'lamp0', true],
    ['lamp[0-4]', 'lump0', false],
    ['(?<half1>x){2}', '0', false],
  ] as const)('%s on %s', (source, shape, matters) => expect(digitTest([source])(shape)).toBe(matters));
});
