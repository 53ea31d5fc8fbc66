import { expect, test } from 'vitest';
import type { ReadingNews } from '../../../web/protocol.ts';
import {
  amountOf,
  beginReading,
  type ReadingNow,
  sayAmount,
  secondsLeft,
  withNews,
} from '../../../web/reading-now.ts';

/** Files of so many bytes, numbered from 1. */
function files(sizes: Readonly<Record<string, number>>): ReadingNow {
  const all = Object.entries(sizes).map(([name, size], index) => {
    const file = new File([new Uint8Array(size)], name);
    return { id: index + 1, name, file };
  });
  return beginReading(all);
}

function after(now: ReadingNow, ...news: readonly ReadingNews[]): ReadingNow {
  // All of it came at the first second.
  return news.reduce((before, one) => withNews(before, one, 1000), now);
}

const begin = (file: number): ReadingNews => ({ kind: 'begin', file });
const bytes = (file: number, count: number, rows = 0): ReadingNews => ({
  kind: 'bytes',
  file,
  bytes: count,
  rows,
});

test('says bytes and per cent from the first, and no time before a rate is known', () => {
  const now = files({ 'a.csv': 3000, 'b.csv': 1000, 'site.yaml': 500 });
  // A YAML file does not count: 4,000 bytes.
  expect(sayAmount(now, 1000)).toBe('0.0 of 4.0 kB, 0 %');
  expect(sayAmount(after(now, begin(1), bytes(1, 1000)), 2999)).toBe('1.0 of 4.0 kB, 25 %');
});

test('says the time left at the rate so far', () => {
  const now = after(files({ 'a.csv': 3000, 'b.csv': 1000 }), begin(1), bytes(1, 1000));
  // 1,000 bytes in 4 s: 3,000 more take 12 s, said as the next 5 s.
  expect(secondsLeft(now, 5000)).toBe(12);
  expect(sayAmount(now, 5000)).toBe('1.0 of 4.0 kB, 25 %, about 15 s left');
  // 3,500 bytes in 7 s: 500 more take 1 s.
  expect(sayAmount(after(now, bytes(1, 3000), begin(2), bytes(2, 500)), 8000)).toContain('about 1 s left');
  expect(secondsLeft(files({ 'a.csv': 3000 }), 9000)).toBeNull();
});

test('counts a file as read once the next begins, whatever of it was read', () => {
  const now = after(files({ 'a.csv': 3000, 'b.csv': 1000 }), begin(1), bytes(1, 64), begin(2));
  expect(amountOf(now)).toEqual({ read: 3000, all: 4000, percent: 75 });
  expect(now.files.map(({ state }) => state)).toEqual(['read', 'reading']);
});

test('never goes back where a file is read twice, and never past all', () => {
  const once = after(files({ 'a.csv': 3000 }), begin(1), bytes(1, 2000), bytes(1, 5000));
  expect(amountOf(once).read).toBe(3000);
  expect(amountOf(after(once, begin(1), bytes(1, 6000))).percent).toBe(100);
});

test('takes an archive for twice its bytes: it is read for its hash first', () => {
  expect(amountOf(after(files({ 'a.zip': 1000 }), bytes(1, 1000))).percent).toBe(50);
});

test('does not count what is known already', () => {
  const now = after(
    files({ 'a.csv': 3000, 'b.csv': 1000 }),
    { kind: 'kept', files: [1] },
    begin(1),
    begin(2),
    bytes(2, 500),
  );
  expect(amountOf(now)).toEqual({ read: 500, all: 1000, percent: 50 });
  expect(amountOf(after(now, { kind: 'kept', files: [1, 2] })).percent).toBe(100);
});

test('keeps what failed, and is whole once all is put together', () => {
  const failure = { where: 'a.csv', what: 'the file is empty.', fix: 'Export it again.' };
  const now = after(files({ 'a.csv': 3000 }), begin(1), { kind: 'failure', failure }, { kind: 'together' });
  expect(now.failures).toEqual([failure]);
  // It is tried once more.
  expect(after(now, begin(1)).failures).toEqual([]);
  expect(amountOf(now).percent).toBe(100);
});
