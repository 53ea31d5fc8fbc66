import { describe, expect, test } from 'vitest';
import { type GivenStore, givenStore } from '../../../web/given-store.ts';
import type { GivenFile } from '../../../web/protocol.ts';
import { readSite } from '../../../web/read-site.ts';
import { readLines } from '../../../web/site-lines.ts';
import type { SiteSession } from '../../../web/site-session.ts';
import { asked } from '../../support/read-given.ts';

/** Ready and not ready in turns, minute by minute: 1,500 rows have more than the 64 kB by which a layout is recognised. */
const rows = (count: number): string =>
  Array.from({ length: count }, (_, n) => {
    const stamp = new Date(Date.UTC(2026, 2, 14, 0, n)).toISOString();
    return `${stamp},RO1,partner ${n % 2 === 0 ? 'ready' : 'not ready'}\n`;
  }).join('');
const text = (count: number): string => `time,unit,message\n${rows(count)}`;

function followed(content: string, id = 1, life: NonNullable<GivenFile['life']> = 'grows'): GivenFile {
  return { id, name: 'logs/a.csv', file: new File([content], 'a.csv'), life };
}

/** Reads one file, and gives how many bytes were read for it. */
async function read(
  store: GivenStore,
  given: GivenFile,
): Promise<{ readonly site: SiteSession; readonly bytes: number }> {
  let bytes = 0;
  const site = await readSite(asked([given]), store, (news) => {
    if (news.kind === 'bytes') bytes = Math.max(bytes, news.bytes);
  });
  return { site, bytes };
}

const changes = ({ imported }: SiteSession): unknown =>
  imported.files.map(({ input, changes: all }) => [input.rows, input.sha256, input.to, all]);

/** A file that the browser does not give any more. */
function broken(content: string): File {
  return Object.assign(new File([content], 'a.csv'), {
    slice: () => {
      throw new DOMException('It changed.', 'NotReadableError');
    },
  });
}

describe('a file that is followed', () => {
  test('is read on from where it ended, and comes to what a whole reading comes to', async () => {
    const store = givenStore();
    await read(store, followed(text(1600)));
    const second = await read(store, followed(text(1700)));
    const whole = await read(givenStore(), followed(text(1700), 9));
    expect(changes(second.site)).toEqual(changes(whole.site));
    expect(second.site.imported.files[0]?.input.rows.read).toBe(1700);
    // A hundred rows of some 45 bytes, and what the layout is recognised by.
    expect(second.bytes).toBeLessThan(whole.bytes / 4);
    const line = `${new Date(Date.UTC(2026, 2, 14, 0, 1699)).toISOString()},RO1,partner not ready`;
    const [around] = await readLines(second.site.lines, [{ file: 'logs/a.csv', line: 1701, text: line }], 1);
    expect(around).toMatchObject({ state: 'same', first: 1700 });
  });

  test('keeps a last line back that is half written', async () => {
    const store = givenStore();
    const { site } = await read(store, followed(`${text(20)}2026-03-14T00:20:00.000Z,RO1,partner re`));
    expect(site.imported.files[0]?.input.rows).toMatchObject({ read: 20, unmatched: 0 });
    const later = await read(store, followed(text(21)));
    expect(later.site.imported.files[0]?.input.rows).toMatchObject({ read: 21, unmatched: 0 });
  });

  test('counts that line once nobody follows it any more, and stays as it was read once it is gone', async () => {
    const store = givenStore();
    const cut = text(21).trimEnd();
    await read(store, followed(cut));
    const { site } = await read(store, followed(cut, 1, 'ended'));
    expect(site.imported.files[0]?.input.rows).toMatchObject({ read: 21, unmatched: 0 });
    const gone = { ...followed(cut, 1, 'gone'), file: broken(cut) };
    const later = await read(store, gone);
    expect(later.site.imported.failures).toEqual([]);
    expect(later.site.imported.files[0]?.input.rows.read).toBe(21);
  });

  test('of another number is another file', async () => {
    const store = givenStore();
    await read(store, followed(text(1600)));
    const { site } = await read(store, followed(text(10), 2));
    expect(site.imported.files[0]?.input.rows.read).toBe(10);
  });
});

test('a file that grew while it was read is read on as it is now; one that shrank or is gone is refused', async () => {
  const before = text(2000);
  const given = { ...followed(before), file: broken(before) };
  const readWith = async (now: File | null): Promise<SiteSession> =>
    (
      await read(
        givenStore(() => Promise.resolve(now)),
        given,
      )
    ).site;
  const grown = await readWith(new File([text(2001)], 'a.csv'));
  expect(grown.imported.files[0]?.input.rows.read).toBe(2000);
  for (const now of [null, new File([text(3)], 'a.csv')])
    await expect(readWith(now)).rejects.toThrow('it was moved, changed or deleted since it was chosen');
});
