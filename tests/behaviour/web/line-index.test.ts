import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countEnds, noteEnds, pieceBytes } from '../../../web/line-index.ts';

/** As plainly as can be. */
function endsIn(bytes: Uint8Array): number {
  return Array.from(bytes).filter((byte) => byte === 10).length;
}

test('the line ends before each piece are those of its bytes, wherever they stand in memory', () => {
  const near10 = fc.constantFrom(0, 9, 10, 10, 11, 0x0b, 0x8a, 0x7f, 0x80, 0xff);
  fc.assert(
    fc.property(fc.array(near10, { maxLength: 2500 }), fc.integer({ min: 0, max: 7 }), (values, offset) => {
      const memory = new Uint8Array(offset + values.length);
      memory.set(values, offset);
      const bytes = memory.subarray(offset);
      const index = [0];
      noteEnds(index, 0, bytes);
      expect(index).toEqual(values.length === 0 ? [0] : [0, endsIn(bytes)]);
    }),
  );
});

test('every byte of a piece may end a line, and pieces go on from each other', () => {
  const index = [0];
  noteEnds(index, 0, new Uint8Array(pieceBytes + 3).fill(10));
  expect(index).toEqual([0, pieceBytes, pieceBytes + 3]);
});

test('bytes that do not stand where the index ends are not counted twice', () => {
  const index = [0, 7];
  noteEnds(index, 0, Uint8Array.of(10, 10));
  expect(index).toEqual([0, 7]);
});

test('a text is counted as its bytes are', () => {
  expect(countEnds('a\n\nb\n')).toBe(3);
});
