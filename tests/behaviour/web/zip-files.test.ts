import { describe, expect, test } from 'vitest';
import { zipOf } from '../../../web/zip-files.ts';
import { readStored } from '../../support/read-text.ts';

const journal = 'time,unit,message\n2026-03-14T10:00:00Z,RO1-A,light steady\n';

async function bytesOf(blob: Blob): Promise<Uint8Array> {
  return new Uint8Array(await blob.arrayBuffer());
}

describe('a zip of reports', () => {
  test('is read by another reader: every file under its name, byte for byte', async () => {
    const other = `${journal}2026-03-14T11:00:00Z,RO1-A,«Grüße»\n`;
    const zip = await zipOf([
      { name: 'RO1/a.csv', text: journal },
      { name: 'RO1/b.csv', text: other },
    ]);
    const { files, failures } = await readStored({ 'all.zip': await bytesOf(zip) });
    expect(failures).toEqual([]);
    expect(files.map(({ input }) => [input.file, input.bytes, input.rows.read])).toEqual([
      ['all.zip/RO1/a.csv', Buffer.byteLength(journal), 1],
      ['all.zip/RO1/b.csv', Buffer.byteLength(other), 2],
    ]);
  });

  test('is the same for the same files', async () => {
    const files = [{ name: 'fleet.md', text: '# Fleet review'.repeat(100) }];
    expect(await bytesOf(await zipOf(files))).toEqual(await bytesOf(await zipOf(files)));
  });

  test('takes files that come one after the other', async () => {
    async function* coming() {
      for (const name of ['a.csv', 'b.csv', 'c.csv']) yield { name, text: journal };
    }
    const { files } = await readStored({ 'all.zip': await bytesOf(await zipOf(coming())) });
    expect(files).toHaveLength(3);
  });
});
