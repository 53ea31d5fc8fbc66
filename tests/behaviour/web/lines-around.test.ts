import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../../src/pipeline.ts';
import type { SourceLine } from '../../../src/vocabulary.ts';
import type { Bytes } from '../../../web/browser-files.ts';
import { noteEnds } from '../../../web/line-index.ts';
import { linesOfFile, linesOfMember } from '../../../web/lines-around.ts';

/** What is answered after what was asked later too: a disk and a browser promise no order. */
function bytesOf(content: Uint8Array): Bytes & { readonly asked: () => number } {
  let [asked, calls] = [0, 0];
  return {
    size: content.length,
    slice: async (from, to) => {
      asked += to - from;
      calls += 1;
      await new Promise((resolve) => setTimeout(resolve, calls % 2));
      return content.subarray(from, to);
    },
    asked: () => asked,
  };
}

function memberOf(content: Uint8Array, piece: number): Parameters<typeof linesOfMember>[0] {
  return {
    name: 'x.zip/x.csv',
    bytes: null,
    async *open() {
      for (let at = 0; at < content.length; at += piece) yield content.subarray(at, at + piece);
    },
  };
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const at = (line: number, text: string): SourceLine => ({ file: 'x.csv', line, text });

describe('lines read back', () => {
  const small = 'a\r\nb\r\nc é\r\nd\r\ne';

  test.each([
    ['of a file', () => linesOfFile(bytesOf(utf8(small)), 'utf-8', [0])],
    ['of a member that comes byte by byte', () => linesOfMember(memberOf(utf8(small), 1), 'utf-8')],
    ['of a member that comes at once', () => linesOfMember(memberOf(utf8(small), 100), 'utf-8')],
  ])('%s are those around the cited ones, as an editor counts them', async (_, open) => {
    expect(await open().around([at(3, 'c é'), at(1, 'a'), at(5, 'e')], 1)).toEqual([
      { first: 2, last: 3, lines: ['b', 'c é', 'd'], state: 'same' },
      { first: 1, last: 1, lines: ['a', 'b'], state: 'same' },
      { first: 4, last: 5, lines: ['d', 'e'], state: 'same' },
    ]);
  });

  test('of a row that goes over several lines are all of them', async () => {
    const lines = linesOfFile(bytesOf(utf8('a\r\nb,"one\r\ntwo"\r\nc\r\n')), 'utf-8', [0]);
    expect(await lines.around([at(2, 'b,"one\r\ntwo"')], 1)).toEqual([
      { first: 1, last: 3, lines: ['a', 'b,"one', 'two"', 'c'], state: 'same' },
    ]);
  });

  test('that say something else than what was kept are not shown: what was kept is', async () => {
    const lines = linesOfFile(bytesOf(utf8('a\nchanged\nc\n')), 'utf-8', [0]);
    expect(await lines.around([at(2, 'b'), at(9, 'gone'), at(3, 'c')], 0)).toEqual([
      { first: 2, last: 2, lines: ['b'], state: 'differs' },
      { first: 9, last: 9, lines: ['gone'], state: 'differs' },
      { first: 3, last: 3, lines: ['c'], state: 'same' },
    ]);
  });

  test('of a file that cannot be read any more are those that were kept; the next question is answered', async () => {
    let isGone = true;
    const whole = utf8('a\nb\n');
    const lines = linesOfFile(
      {
        size: whole.length,
        slice: async () => {
          if (isGone) throw new InputError('x.csv', 'it is gone.', 'Choose it again.');
          return whole;
        },
      },
      'utf-8',
      [0],
    );
    const kept = { first: 2, last: 2, lines: ['b'] };
    expect(await lines.around([at(2, 'b')], 0)).toEqual([{ ...kept, state: 'unreadable' }]);
    isGone = false;
    expect(await lines.around([at(2, 'b')], 0)).toEqual([{ ...kept, state: 'same' }]);
  });

  test('behind zeros that the import left out are the same', async () => {
    const lines = linesOfFile(bytesOf(utf8('a\n\0\0\0\0b\n')), 'utf-8', [0]);
    expect((await lines.around([at(2, 'b')], 0))[0]?.state).toBe('same');
  });

  test('are found in UTF-16', async () => {
    // The second byte of ਊ (U+0A0A) and its first are those of a line end.
    const text = 'eins ਊ\nzwei\ndrei\n';
    const bytes = new Uint8Array(2 + text.length * 2);
    new DataView(bytes.buffer).setUint16(0, 0xfeff, true);
    for (const [index, character] of [...text].entries())
      new DataView(bytes.buffer).setUint16(2 + index * 2, character.charCodeAt(0), true);
    const lines = linesOfFile(bytesOf(bytes), 'utf-16le', [0]);
    expect((await lines.around([at(2, 'zwei')], 0))[0]?.lines).toEqual(['zwei']);
  });
});

describe('in a file of many pieces', () => {
  const all = Array.from({ length: 70_000 }, (_, index) => `${index + 1} – ${'x'.repeat(index % 91)}`);
  const content = utf8(all.join('\n'));
  const question = fc.record({
    line: fc.integer({ min: 1, max: all.length }),
    reach: fc.integer({ min: 0, max: 4 }),
  });

  test('lines are those of the whole text, however many are asked for at once', async () => {
    expect(content.length).toBeGreaterThan(3 * 1_048_576);
    await fc.assert(
      fc.asyncProperty(fc.array(question, { minLength: 1, maxLength: 12 }), async (questions) => {
        const lines = linesOfFile(bytesOf(content), 'utf-8', [0]);
        const found = await Promise.all(
          questions.map(({ line, reach }) => lines.around([at(line, all[line - 1] ?? '')], reach)),
        );
        for (const [index, { line, reach }] of questions.entries()) {
          const first = Math.max(1, line - reach);
          const expected = { first, last: line, lines: all.slice(first - 1, line + reach), state: 'same' };
          expect(found[index]).toEqual([expected]);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('whose line ends were noted as it was read, only the piece of the line is read, and its neighbour', async () => {
    const index = [0];
    for (let from = 0; from < content.length; from += 2_097_152)
      noteEnds(index, from, content.subarray(from, from + 2_097_152));
    // A second reading of the same bytes notes nothing twice.
    noteEnds(index, 0, content.subarray(0, 2_097_152));
    expect(index.at(-1)).toBe(all.length - 1);
    const bytes = bytesOf(content);
    const found = await linesOfFile(bytes, 'utf-8', index).around([at(69_000, all[68_999] ?? '')], 2);
    expect(found[0]?.lines).toEqual(all.slice(68_997, 69_002));
    expect(bytes.asked()).toBeLessThanOrEqual(2 * 262_144);
  });
});
