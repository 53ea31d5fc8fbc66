import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Bytes } from '../../../web/browser-files.ts';
import { linesAround, linesUnpacked } from '../../../web/lines-around.ts';

function bytesOf(content: Uint8Array): Bytes & { readonly asked: () => number } {
  let asked = 0;
  return {
    size: content.length,
    slice: async (from, to) => {
      asked += to - from;
      return content.subarray(from, to);
    },
    asked: () => asked,
  };
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('lines read back', () => {
  test('are those around the cited one, as an editor counts them', async () => {
    const bytes = bytesOf(utf8('a\r\nb\r\nc\r\nd\r\ne\r\n'));
    expect(await linesAround(bytes, 'utf-8', [0], 3, 1)).toEqual({ first: 2, lines: ['b', 'c', 'd'] });
    expect(await linesAround(bytes, 'utf-8', [0], 1, 2)).toEqual({ first: 1, lines: ['a', 'b', 'c'] });
    expect(await linesAround(bytes, 'utf-8', [0], 5, 2)).toEqual({ first: 3, lines: ['c', 'd', 'e'] });
  });
  test('of a member of an archive are the same, whatever pieces it is unpacked in', async () => {
    const text = 'a\r\nb\r\nc é\r\nd\r\ne';
    const whole = utf8(text);
    for (const piece of [1, 3, 100]) {
      const member = {
        name: 'x.zip/x.csv',
        bytes: null,
        async *open() {
          for (let at = 0; at < whole.length; at += piece) yield whole.subarray(at, at + piece);
        },
      };
      for (const line of [1, 3, 5])
        expect(await linesUnpacked(member, 'utf-8', line, 1)).toEqual(
          await linesAround(bytesOf(whole), 'utf-8', [0], line, 1),
        );
    }
  });
  test('are none past the end', async () => {
    expect((await linesAround(bytesOf(utf8('a\nb')), 'utf-8', [0], 9, 1)).lines).toEqual([]);
  });
  test('are found in UTF-16', async () => {
    const text = 'eins\nzwei\ndrei\n';
    const bytes = new Uint8Array(2 + text.length * 2);
    new DataView(bytes.buffer).setUint16(0, 0xfeff, true);
    for (const [index, character] of [...text].entries())
      new DataView(bytes.buffer).setUint16(2 + index * 2, character.charCodeAt(0), true);
    expect((await linesAround(bytesOf(bytes), 'utf-16le', [0], 2, 0)).lines).toEqual(['zwei']);
  });
  test('are the same as of the whole text, wherever they lie in a file of several chunks', async () => {
    const lines = Array.from({ length: 70_000 }, (_, index) => `${index + 1} – ${'x'.repeat(index % 91)}`);
    const bytes = bytesOf(utf8(lines.join('\n')));
    expect(bytes.size).toBeGreaterThan(3 * 1_048_576);
    const index = [0];
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: lines.length }),
        fc.integer({ min: 0, max: 4 }),
        async (line, reach) => {
          const first = Math.max(1, line - reach);
          const expected = lines.slice(first - 1, line + reach);
          expect(await linesAround(bytes, 'utf-8', index, line, reach)).toEqual({ first, lines: expected });
        },
      ),
      { numRuns: 40 },
    );
    const before = bytes.asked();
    await linesAround(bytes, 'utf-8', index, 69_000, 2);
    // With the index grown only the chunk of the line, and the one before it, are read.
    expect(bytes.asked() - before).toBeLessThanOrEqual(2 * 1_048_576);
  });
});
