import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { readStored } from '../../../support/read-text.ts';

test('two members of one name are both read, and told apart in their names', async () => {
  const journal = (half: string): Uint8Array =>
    strToU8(`time,unit,message\n2026-03-14T10:00:00Z,RO1-${half},light steady\n`);
  const packed = zipSync({ 'day/a.csv': journal('A'), 'day/b.csv': journal('B') });
  // No packer makes the same name twice by itself: the second one's is written over, in both places.
  const bytes = Buffer.from(packed);
  for (let at = bytes.indexOf('day/b.csv'); at >= 0; at = bytes.indexOf('day/b.csv', at))
    bytes.write('day/a.csv', at);
  const { files, failures } = await readStored({ 'x.zip': Uint8Array.from(bytes) });
  expect(failures).toEqual([]);
  expect(files.map(({ input }) => [input.file, input.units])).toEqual([
    ['x.zip/day/a (2).csv', ['RO1-B']],
    ['x.zip/day/a.csv', ['RO1-A']],
  ]);
});
