import { gzipSync, strToU8, zipSync } from 'fflate';
import { encode, encodings } from '../../../samples/encode.ts';
import type { Random } from '../../../samples/random.ts';
import type { Dressed, Files } from '../stories/dressing.ts';
import { isStamped, joinLines, timedLines } from '../stories/timed-lines.ts';
import type { Changed, Given, Relation } from './relation.ts';

/** What must change nothing: how files are named, ordered, repeated, divided, encoded and packed. */
export const sameFiles: readonly Relation[] = [
  same('file-order', ({ files }, random) => {
    const names = Object.keys(files);
    const turned = shuffled(names, random);
    return turned.join() === names.join() ? [] : [[`order ${turned.join(', ')}`, pick(files, turned)]];
  }),
  same('file-twice', ({ files }, random) =>
    Object.entries(files).map(([name, text]) => {
      const again = random() < 0.5 ? `copy/${name}` : `again-${name}`;
      const both = shuffled([...Object.entries(files), [again, text] as const], random);
      return [`${name} also as ${again}`, Object.fromEntries(both)];
    }),
  ),
  same('split-file', ({ files }, random) =>
    Object.keys(files)
      .filter((name) => isStamped(files[name] ?? ''))
      .flatMap((name) => {
        const [first, second] = split(files[name] ?? '', random);
        if (!tellAlike(first, second)) return [];
        const parts: readonly (readonly [string, string])[] = [
          [`1-${name}`, first],
          [`2-${name}`, second],
        ];
        const all = Object.entries(files).flatMap((file) => (file[0] === name ? parts : [file]));
        return [[`${name} in two that overlap`, Object.fromEntries(all)] as const];
      }),
  ),
  same('encoding-and-delimiter', ({ files }, random) => {
    const encoding = encodings[Math.floor(random() * encodings.length)] ?? 'utf-8';
    const delimiter = [';', '\t', '|'][Math.floor(random() * 3)] ?? ';';
    const written = Object.entries(files).map(([name, text]) => {
      // No cell of a dressed table holds a comma.
      const table = name.endsWith('.csv') ? text.replaceAll(',', delimiter) : text;
      return [name, encode(table, encoding)] as const;
    });
    return [[`${encoding}, delimiter ${JSON.stringify(delimiter)}`, Object.fromEntries(written)]];
  }),
  same('archive', ({ files }) => {
    const packed = Object.entries(files).map(
      ([name, text]) => [`${name}.gz`, gzipSync(strToU8(text))] as const,
    );
    const members = Object.entries(files).map(([name, text]) => [`may/${name}`, strToU8(text)] as const);
    return [
      ['each in gzip', Object.fromEntries(packed)],
      ['all in a zip', { 'exports.zip': zipSync(Object.fromEntries(members)) }],
    ];
  }),
];

function same(
  id: string,
  change: (dressed: Dressed, random: Random) => readonly (readonly [string, Given['files']])[],
): Relation {
  return {
    id,
    kind: 'same',
    change: (dressed, _told, random) =>
      change(dressed, random).map(
        ([what, files]): Changed => ({
          what,
          given: { files, phrasebook: dressed.phrasebook },
        }),
      ),
  };
}

function shuffled<T>(list: readonly T[], random: Random): readonly T[] {
  const keyed = list.map((item) => ({ item, key: random() }));
  return keyed.sort((a, b) => a.key - b.key).map(({ item }) => item);
}

function pick(files: Files, names: readonly string[]): Files {
  return Object.fromEntries(names.map((name) => [name, files[name] ?? '']));
}

const leastOverlapMs = 600_000;

/** A file as two: the first to an instant, the second from ten minutes before it or more, so that both tell of three stamps. */
function split(text: string, random: Random): readonly [string, string] {
  const lines = timedLines(text);
  const times = lines.flatMap(({ time }) => time ?? []);
  const [from, to] = [Math.min(...times), Math.max(...times)];
  const stamps = [...new Set(times)].sort((a, b) => a - b);
  const drawn = from + (to - from - leastOverlapMs) * (0.1 + 0.8 * random());
  const second = Math.min(drawn, stamps.at(-3) ?? from);
  const first = Math.max(second + leastOverlapMs, stamps.filter((time) => time >= second)[2] ?? to);
  const part = (keeps: (time: number) => boolean): string =>
    joinLines(lines.filter(({ time }) => time === null || keeps(time)));
  return [part((time) => time <= first), part((time) => time >= second)];
}

/**
 * True if both tell of redundancy, and of polls, a reading a row, both read the same: a part in which nothing is understood is no log, and
 * what a part never reads it does not observe.
 */
function tellAlike(first: string, second: string): boolean {
  const [one, other] = [first, second].map(thingsIn);
  return one !== undefined && other !== undefined && one !== '' && one === other;
}

const ordinary = /\buser Operator \d+ logged o(?:n|ff)\b/;

/** What a text tells of: of a poll, a reading a row, what it reads, of others something or, as an empty text, nothing. */
function thingsIn(text: string): string {
  const rows = text.trimEnd().split('\n');
  const width = (rows[0] ?? '').split(',').length;
  const isPoll = width === 4 && /parameter|item/i.test(rows[0] ?? '');
  if (isPoll) return [...new Set(rows.map((row) => row.split(',').slice(1, 3).join()))].sort().join('\n');
  return rows.some((row) => isStamped(row) && !ordinary.test(row)) ? 'something' : '';
}
