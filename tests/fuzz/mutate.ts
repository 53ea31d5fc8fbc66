import type { Random } from '../../samples/random.ts';

type Mutation = (bytes: Uint8Array, random: Random, other: Uint8Array) => Uint8Array;

const encoder = new TextEncoder();
/** What exports, YAML and archives stumble over. */
const odd: readonly Uint8Array[] = [
  ...[
    '"',
    '""',
    ',',
    ';',
    '\t',
    '|',
    '\n',
    '\r',
    '\r\n',
    '\n\n',
    ' ',
    '=',
    ':',
    '{',
    '}',
    '[',
    ']',
    '<',
    '>',
    '\\',
    "'",
  ],
  ...['\0', '\x1b[31m', '\x07', '\u202e', '\u200b', '\ufeff', 'ä', '漢', '😀', '\ud7ff', '\u2028'],
  ...['99999999999999999999', '-1', '1e309', '0x7f', '00', '9007199254740993', '-0'],
  ...[
    '0000-00-00 00:00:00',
    '9999-12-31T23:59:59Z',
    '2026-10-25 01:30:00',
    '1970-01-01',
    '29/02/2026',
    '+99:99',
  ],
  ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', '=1+1', '<script>', '../../x', 'CON', '%s%n'],
  ...[
    '&a ',
    '*a',
    '<<: *a\n',
    '!!js/function x',
    '? ',
    '- - - ',
    '"\\x',
    '|2\n',
    '(?<unit>',
    '(a+)+$',
    '[[:',
  ],
  ...[
    'RO1-A',
    'RO2',
    'time',
    'unit',
    'parameter',
    'value',
    'message',
    'partner ready',
    'removed',
    'role active',
  ],
].map((text) => encoder.encode(text));

const mutations: readonly Mutation[] = [
  // A byte is another, or a few bits of it are.
  (bytes, random) => changed(bytes, (copy, at) => copy.set([Math.floor(random() * 256)], at), random),
  (bytes, random) =>
    changed(bytes, (copy, at) => copy.set([(copy[at] ?? 0) ^ (1 << Math.floor(random() * 8))], at), random),
  (bytes, random) => inserted(bytes, pick(odd, random), random),
  (bytes, random) => inserted(bytes, pick(odd, random), random),
  (bytes, random) => {
    const [from, to] = span(bytes, random, 200);
    return joined(bytes.subarray(0, from), bytes.subarray(to));
  },
  (bytes, random) => {
    const [from, to] = span(bytes, random, 400);
    return joined(bytes.subarray(0, to), bytes.subarray(from));
  },
  (bytes, random, other) => {
    const [from, to] = span(other, random, 400);
    return inserted(bytes, other.subarray(from, to), random);
  },
  (bytes, random) => bytes.subarray(0, Math.floor(random() * bytes.length)),
  // Every one of a byte becomes another: a delimiter, a digit, a line end.
  (bytes, random) => {
    const [from, to] = [
      bytes[Math.floor(random() * bytes.length)],
      bytes[Math.floor(random() * bytes.length)],
    ];
    return bytes.map((byte) => (byte === from ? (to ?? 0) : byte));
  },
  (bytes, random) =>
    inserted(bytes, new Uint8Array(Math.floor(random() * 60_000)).fill(pick(odd, random)[0] ?? 0), random),
  (bytes, random) => {
    const some = pick(odd, random);
    return inserted(bytes, joined(...Array.from({ length: 400 }, () => some)), random);
  },
  (bytes) => joined(Uint8Array.of(0xff, 0xfe), Uint8Array.from([...bytes].flatMap((byte) => [byte, 0]))),
  (bytes) => joined(Uint8Array.of(0xef, 0xbb, 0xbf), bytes),
];

/** One to six things happen to the bytes, mostly few; the same for the same numbers. */
export function mutate(bytes: Uint8Array, random: Random, other: Uint8Array): Uint8Array {
  let made = bytes;
  const count = 1 + Math.floor(random() * random() * 6);
  for (let done = 0; done < count && made.length > 0; done += 1)
    made = pick(mutations, random)(made, random, other);
  return made;
}

function pick<T>(items: readonly T[], random: Random): T {
  const item = items[Math.floor(random() * items.length)];
  if (item === undefined) throw new RangeError('Nothing to pick from.');
  return item;
}

function span(bytes: Uint8Array, random: Random, most: number): readonly [number, number] {
  const from = Math.floor(random() * bytes.length);
  return [from, Math.min(bytes.length, from + Math.floor(random() * most))];
}

function changed(
  bytes: Uint8Array,
  change: (copy: Uint8Array, at: number) => void,
  random: Random,
): Uint8Array {
  const copy = bytes.slice();
  change(copy, Math.floor(random() * copy.length));
  return copy;
}

function inserted(bytes: Uint8Array, some: Uint8Array, random: Random): Uint8Array {
  const at = Math.floor(random() * (bytes.length + 1));
  return joined(bytes.subarray(0, at), some, bytes.subarray(at));
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const made = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    made.set(part, at);
    at += part.length;
  }
  return made;
}
