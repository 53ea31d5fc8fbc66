import { once } from 'node:events';
import { createWriteStream, existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { seeded } from '../../samples/random.ts';
import { timed } from './programs.ts';

const folder = join('out', 'bench');
const rounds = 3;

/**
 * `npm run bench:journal -- 200 0.1`: a journal of so many megabytes under fifty message rules; so many of its messages hold a
 * number of their own. `npm run bench:journal -- 200 used`: one in which every message changes a state of one of many pairs.
 */
export async function benchJournal(megabytes = '200', share = '0'): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const input = join(folder, `journal-${megabytes}-${share}.csv`);
  const phrasebook = join(folder, 'fifty-rules.yaml');
  writeFileSync(phrasebook, fiftyRules());
  if (!existsSync(input)) await writeJournal(input, Number(megabytes) * 1e6, share);
  const command = [
    process.execPath,
    join('dist', 'steadypair.mjs'),
    'timeline',
    input,
    '--phrasebook',
    phrasebook,
  ];
  const runs = Array.from({ length: rounds }, () => timed([...command, '--out', join(folder, 'events.csv')]));
  const best = runs.reduce((a, b) => (b.seconds < a.seconds ? b : a));
  const bytes = statSync(input).size;
  const memory = best.megabytes === null ? 'not measured' : `${best.megabytes.toFixed(0)} MB`;
  const what =
    share === 'used' ? 'every message used' : `${share} of the messages with a number of their own`;
  return `a journal of ${(bytes / 1e6).toFixed(0)} MB, ${what}, fifty rules: ${best.seconds.toFixed(2)} s, ${(bytes / 1e6 / best.seconds).toFixed(0)} MB/s, ${memory} (best of ${rounds})`;
}

const things = [
  'cabinet door',
  'fan tray',
  'card',
  'fibre',
  'battery',
  'clock',
  'licence',
  'user',
  'backup',
  'scan',
];

/** Twenty-five messages that mean something, each in its own words, and as many that a site knows to mean nothing of the pair. */
function fiftyRules(): string {
  const told = things.flatMap((thing, index) => [
    `  - { when: '^${thing} says partner (?<value>yes|no)$', signal: partner-ready }`,
    `  - { when: '^${thing} light (?<value>steady|flashing)$', signal: light }`,
    ...(index < 5 ? [`  - { when: '\\bfault ${index} of the ${thing}\\b', signal: fault }`] : []),
  ]);
  const plain = things.flatMap((thing) => [
    `  - { when: '^${thing} (opened|closed) by hand$', signal: note }`,
    `  - { when: '^${thing} test (passed|failed)$', signal: note }`,
  ]);
  const more = things.slice(0, 5).map((thing) => `  - { when: '${thing} replaced$', signal: note }`);
  return `messages:\n${[...told, ...plain, ...more].join('\n')}\nignore:\n  - '^login of operator \\d+'\n`;
}

/** Unit and message of the next row. */
type NextRow = () => string;

/** Ordinary messages that mean nothing of the pair; one in two hundred is one of the rules'. */
function ordinaryMessages(share: number, random: () => number): NextRow {
  const pick = picker(random);
  return () => {
    const thing = things[pick(things.length)] ?? '';
    const own = random() < share ? ` number ${pick(1e9)}` : '';
    const ordinary = [
      `login of operator ${pick(9)}`,
      `${thing} read at the cabinet`,
      `${thing} count within its limits`,
    ];
    const told = [`${thing} says partner yes`, `${thing} light steady`, `${thing} light flashing`];
    const message = random() < 0.005 ? told[pick(3)] : ordinary[pick(3)];
    return `RO${1 + pick(8)}-${pick(2) === 0 ? 'A' : 'B'},${message}${own}`;
  };
}

/** Each row changes what one of eighty pairs says of its partner or its light. */
function changingStates(random: () => number): NextRow {
  const pick = picker(random);
  const states = [
    ['card says partner yes', 'card says partner no'],
    ['fan tray light steady', 'fan tray light flashing'],
    ['supply good', 'supply fault'],
  ] as const;
  const flips = new Map<string, number>();
  return () => {
    const unit = `RO${1 + pick(80)}-${pick(2) === 0 ? 'A' : 'B'}`;
    const state = pick(states.length);
    const key = `${unit} ${state}`;
    const flip = 1 - (flips.get(key) ?? 0);
    flips.set(key, flip);
    return `${unit},${states[state]?.[flip] ?? ''}`;
  };
}

function picker(random: () => number): (of: number) => number {
  return (of) => Math.floor(random() * of);
}

async function writeJournal(path: string, size: number, share: string): Promise<void> {
  const random = seeded(7);
  const pick = picker(random);
  const rowOf = share === 'used' ? changingStates(random) : ordinaryMessages(Number(share), random);
  const stream = createWriteStream(path);
  let bytes = 0;
  let at = Date.UTC(2026, 0, 1);
  await once(stream, 'open');
  stream.write('time,unit,message\n');
  while (bytes < size) {
    const rows: string[] = [];
    for (let row = 0; row < 4096; row += 1) {
      at += 1 + pick(4000);
      rows.push(`${new Date(at).toISOString()},${rowOf()}\n`);
    }
    const text = rows.join('');
    bytes += text.length;
    if (!stream.write(text, 'latin1')) await once(stream, 'drain');
  }
  stream.end();
  await once(stream, 'finish');
}
