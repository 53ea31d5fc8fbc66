import { once } from 'node:events';
import { createWriteStream, existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { seeded } from '../../samples/random.ts';
import { timed } from './programs.ts';

const folder = join('out', 'bench');
const rounds = 3;

/** `npm run bench:journal -- 200 0.1`: a journal of so many megabytes under fifty message rules; so many of its messages hold a number of their own. */
export async function benchJournal(megabytes = '200', share = '0'): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const input = join(folder, `journal-${megabytes}-${share}.csv`);
  const phrasebook = join(folder, 'fifty-rules.yaml');
  writeFileSync(phrasebook, fiftyRules());
  if (!existsSync(input)) await writeJournal(input, Number(megabytes) * 1e6, Number(share));
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
  return `a journal of ${(bytes / 1e6).toFixed(0)} MB, ${share} of the messages with a number of their own, fifty rules: ${best.seconds.toFixed(2)} s, ${(bytes / 1e6 / best.seconds).toFixed(0)} MB/s, ${memory} (best of ${rounds})`;
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
export function fiftyRules(): string {
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

/**
 * A journal of at least so many bytes. The share `told` of its messages is of the rules', the others mean nothing of the pair; the share
 * `share` holds a number of its own.
 */
export async function writeJournal(path: string, size: number, share: number, told = 0.005): Promise<void> {
  const random = seeded(7);
  const stream = createWriteStream(path);
  const pick = (of: number): number => Math.floor(random() * of);
  let bytes = 0;
  let at = Date.UTC(2026, 0, 1);
  await once(stream, 'open');
  stream.write('time,unit,message\n');
  while (bytes < size) {
    const rows: string[] = [];
    for (let row = 0; row < 4096; row += 1) {
      at += 1 + pick(4000);
      const thing = things[pick(things.length)] ?? '';
      const own = random() < share ? ` number ${pick(1e9)}` : '';
      const ordinary = [
        `login of operator ${pick(9)}`,
        `${thing} read at the cabinet`,
        `${thing} count within its limits`,
      ];
      const meant = [`${thing} says partner yes`, `${thing} light steady`, `${thing} light flashing`];
      const message = random() < told ? meant[pick(3)] : ordinary[pick(3)];
      const unit = `RO${1 + pick(8)}-${pick(2) === 0 ? 'A' : 'B'}`;
      rows.push(`${new Date(at).toISOString()},${unit},${message}${own}\n`);
    }
    const text = rows.join('');
    bytes += text.length;
    if (!stream.write(text, 'latin1')) await once(stream, 'drain');
  }
  stream.end();
  await once(stream, 'finish');
}
