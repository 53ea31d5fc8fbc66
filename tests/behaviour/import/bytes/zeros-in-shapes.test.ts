import { describe, expect, test } from 'vitest';
import { allChanges } from '../../../../src/changes.ts';
import type { ImportedFile } from '../../../../src/vocabulary.ts';
import { readText } from '../../../support/read-text.ts';

const zeros = (count: number): string => '\0'.repeat(count);
const notice = ({ notices }: ImportedFile): string | undefined =>
  notices.find((n) => n.what.includes('zero byte'))?.what;
const sayings = ({ changes }: ImportedFile): readonly string[] =>
  allChanges(changes).map(
    ({ line, signal, value, text }) => `${line} ${signal} ${value} ${text.includes('\0')}`,
  );

/** Read in both lanes, which must say the same. */
async function read(name: string, content: string | Uint8Array): Promise<ImportedFile> {
  const file = await readText(name, content);
  for (const chunk of [7, 65_536])
    expect(await readText(name, content, { chunk, isGeneralOnly: true })).toEqual(file);
  return file;
}

describe('zeros in the midst of a file', () => {
  const wide = [
    'Time,RO1-A.Light,RO1-B.Light',
    '2026-03-01 10:00:00,off,steady',
    '2026-03-01 10:01:00,steady,off',
    '2026-03-01 10:02:00,off,steady',
    '',
  ];

  test('are left out of a wide table and of a table of two columns of time, in UTF-8 and in UTF-16', async () => {
    const apart = [
      'Day,At,unit,message',
      '14/03/2026,10:00:00,RO1-A,light off',
      '14/03/2026,10:01:00,RO1-A,light steady',
      '14/03/2026,10:02:00,RO1-A,light off',
      '',
    ];
    for (const rows of [wide, apart]) {
      const text = rows.map((row, line) => (line === 2 ? zeros(600) + row : row)).join('\r\n');
      const utf16 = new Uint8Array([0xff, 0xfe, ...[...text].flatMap((c) => [c.charCodeAt(0), 0])]);
      const plain = sayings(await read('a.csv', rows.join('\r\n')));
      for (const content of [text, utf16]) {
        const file = await read('a.csv', content);
        expect(sayings(file)).toEqual(plain);
        expect(notice(file)).toContain(`${content === text ? 600 : 1200} zero bytes before line 3`);
      }
    }
  });
});
