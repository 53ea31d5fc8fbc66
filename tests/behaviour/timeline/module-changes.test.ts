import { describe, expect, test } from 'vitest';
import { clockOf, factsOfPair, type Told } from '../../support/pair-facts.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby'];
const end = '10:30:00 RO1 A light off';
const out = '10:10:00 RO1 B module removed';
const back = '10:11:00 RO1 B module inserted';

async function changes(story: Told): Promise<readonly string[]> {
  return (await factsOfPair(story)).moduleChanges.map(
    ({ half, removed, inserted }) => `${half} ${clockOf(removed.time)} ${clockOf(inserted.time)}`,
  );
}
const of = (...lines: readonly string[]): Promise<readonly string[]> =>
  changes([...begin, ...lines, end].sort());

describe('another module', () => {
  test('is one with another serial, whatever else; the same serial is the same module', async () => {
    const before = ['10:00:00 RO1 B serial T4-1', '10:00:00 RO1 B model Tern-4'];
    expect(await of(...before, out, back, '10:11:00 RO1 B serial T4-2')).toEqual(['B 10:10:00 10:11:00']);
    expect(await of(...before, out, back, '10:11:00 RO1 B serial T4-1')).toEqual([]);
    expect(await of(...before, out, '10:15:00 RO1 B module inserted', '10:15:00 RO1 B serial T4-1')).toEqual(
      [],
    );
    // A log that went on saying nothing else: the serial is what it was.
    expect(await of(...before, out, back, '10:11:00 RO1 B model Tern-2')).toEqual([]);
  });

  test('without a serial is one with another model, or one that was out for more than two minutes', async () => {
    const model = '10:00:00 RO1 B model Tern-2';
    expect(await of(model, out, back, '10:11:00 RO1 B model Tern-4')).toEqual(['B 10:10:00 10:11:00']);
    expect(await of(model, out, back)).toEqual([]);
    expect(await of(model, out, '10:12:00 RO1 B module inserted')).toEqual([]);
    expect(await of(model, out, '10:12:00.001 RO1 B module inserted')).toEqual(['B 10:10:00 10:12:00.001']);
    expect(await of(out, back)).toEqual([]);
    expect(await of(out, '10:13:00 RO1 B module inserted')).toEqual(['B 10:10:00 10:13:00']);
    // A serial on one side only decides nothing.
    expect(await of('10:00:00 RO1 B serial T4-1', out, back, '10:11:00 RO1 A serial T4-9')).toEqual([]);
    expect(await of(out, back, '10:11:00 RO1 B serial T4-2')).toEqual([]);
  });

  test('is none where a removal is not followed by an insertion in the same half', async () => {
    expect(await of(out)).toEqual([]);
    expect(await of(out, '10:15:00 RO1 A module inserted')).toEqual([]);
    expect(await of('10:09:00 RO1 B module inserted', '10:15:00 RO1 B module inserted')).toEqual([]);
  });

  test('in both halves are two changes, in the order of their removals', async () => {
    const b = [out, '10:13:00 RO1 B module inserted'];
    const a = ['10:05:00 RO1 A module removed', '10:08:00 RO1 A module inserted'];
    expect(await of(...b, ...a)).toEqual(['A 10:05:00 10:08:00', 'B 10:10:00 10:13:00']);
  });
});

describe('what a module was and what came', () => {
  const identities = async (...lines: readonly string[]): Promise<readonly unknown[]> =>
    (await factsOfPair([...begin, ...lines, end].sort())).moduleChanges.map(({ before, found }) => [
      Object.values(before).join(' '),
      Object.values(found).join(' '),
    ]);
  const before = [
    '10:00:00 RO1 B model Tern-2',
    '10:00:00 RO1 B serial T2-1',
    '10:00:00 RO1 B firmware 6.2.0',
  ];
  const inserted = '10:13:00 RO1 B module inserted';

  test('is the last report before the removal, and the first from it on', async () => {
    const found = [
      '10:13:00 RO1 B model Tern-4',
      '10:13:05 RO1 B serial T4-2',
      '10:13:10 RO1 B firmware 6.3.0',
    ];
    const later = ['10:20:00 RO1 B firmware 6.4.1'];
    expect(await identities(...before, out, inserted, ...found, ...later)).toEqual([
      ['Tern-2 T2-1 6.2.0', 'Tern-4 T4-2 6.3.0'],
    ]);
  });

  test('goes on as it was where nothing was said again', async () => {
    expect(await identities(...before, out, inserted, '10:13:00 RO1 B serial T4-2')).toEqual([
      ['Tern-2 T2-1 6.2.0', 'Tern-2 T4-2 6.2.0'],
    ]);
  });

  test('is not what was reported only after the next removal', async () => {
    const again = ['10:20:00 RO1 B module removed', '10:20:01 RO1 B firmware 6.4.1'];
    expect(await identities(...before, out, inserted, '10:13:00 RO1 B serial T4-2', ...again)).toEqual([
      ['Tern-2 T2-1 6.2.0', 'Tern-2 T4-2 6.2.0'],
    ]);
  });
});
