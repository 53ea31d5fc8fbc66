import { statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { alternate } from './alternate.ts';
import { type Bench, command, type Found, folder } from './bench-case.ts';
import { fiftyRules, writeJournal } from './journal.ts';
import { pollFile } from './polls.ts';

/** One kind of journal: the share of its messages that hold a number of their own, and the share that means something. */
interface Journal {
  readonly id: string;
  readonly job: string;
  readonly numbered: number;
  readonly told: number;
  /** Of more megabytes it would have more changes than the program takes. */
  readonly most?: number;
}

const journals: readonly Journal[] = [
  { id: 'used', job: 'journal, every entry used, fifty rules', numbered: 0, told: 1, most: 300 },
  { id: 'numbers', job: 'journal, a number in every message, fifty rules', numbered: 1, told: 0.005 },
];

/** The states of each unit as they change; the messages that mean nothing are passed over. */
const awk =
  'BEGIN{FS=","} NR>1 && match($3, / (says partner (yes|no)|light (steady|flashing))/){n=split($3,w," "); k=$2","w[n-1]; if(v[k]!=w[n]) print $1","k","w[n]; v[k]=w[n]}';

/** `timeline` over two journals; the yardstick is a pass of mawk that knows two of the rules. */
export const journalBench: Bench = {
  id: 'journals',
  async measure(megabytes) {
    const found: Found[] = [];
    for (const journal of journals) found.push(await measureJournal(journal, megabytes));
    return { rows: found.flatMap(({ rows }) => rows), notes: [], agrees: null };
  },
};

async function measureJournal({ id, job, numbered, told, most }: Journal, asked: number): Promise<Found> {
  const megabytes = Math.min(asked, most ?? asked);
  const input = await pollFile(`journal-${id}-${megabytes}.csv`, (file) =>
    writeJournal(file, megabytes * 1e6, numbered, told),
  );
  const phrasebook = join(folder, 'fifty-rules.yaml');
  writeFileSync(phrasebook, fiftyRules());
  const out = join(folder, 'events.csv');
  const [own, mawk] = alternate([
    { command: [...command, 'timeline', input, '--phrasebook', phrasebook, '--out', out] },
    { command: ['sh', '-c', 'mawk "$1" "$2" > /dev/null', 'sh', awk, input] },
  ]);
  if (own === undefined || mawk === undefined) throw new Error('Nothing was measured.');
  const yardstick = { name: 'mawk', seconds: mawk.seconds };
  const amount = { count: statSync(input).size / 1e6, unit: 'MB' } as const;
  return {
    rows: [
      { job, program: 'steadypair timeline', ...own, amount, yardstick },
      { job, program: 'mawk, one pass, two rules', ...mawk, amount, yardstick },
    ],
    notes: [],
    agrees: null,
  };
}
