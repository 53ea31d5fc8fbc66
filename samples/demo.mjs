// `npm run demo`: makes the work sheet of RO1 from the days before its swap, verifies the two swaps of the invented
// site, diagnoses the pair that will not synchronise, and says where the reports are.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

const command = join('dist', 'steadypair.mjs');
if (!existsSync(command)) {
  console.error('dist/steadypair.mjs: not built yet. Run npm run build.');
  process.exit(2);
}

const site = join('samples', 'marrow-bay');
const histories = ['ro2', 'ro3', 'ro4'].map((pair) => join('samples', 'marrow-bay-fleet', `${pair}.parquet`));

const logsOf = (story) => [join(site, story), '--phrasebook', join(site, story, 'phrasebook.yaml')];
const jobOf = (story) => ['--job', join(site, story, 'job.yaml')];

const runs = [
  {
    title: 'The work sheet of RO1, from the three days before its swap and two years of its sister pairs',
    args: ['prepare', join('samples', 'marrow-bay-before'), ...histories, ...logsOf('clean-swap').slice(1)],
    // The logs of the demo are old: without --allow-old it would name no standby half.
    more: [...jobOf('clean-swap'), '--allow-old'],
    out: 'before-swap',
    expected: 0,
  },
  {
    title: 'A swap of both modules of RO1, seen by a poll, a journal, a text log and notes',
    args: ['verify', ...logsOf('clean-swap')],
    more: jobOf('clean-swap'),
    out: 'clean-swap',
    expected: 0,
  },
  {
    title: 'A swap of one module of RO3 that must not be verified',
    args: ['verify', ...logsOf('bad-swap')],
    more: jobOf('bad-swap'),
    out: 'bad-swap',
    expected: 1,
  },
  {
    title: 'A pair that will not synchronise: PRETREAT',
    args: ['diagnose', ...logsOf('wont-sync')],
    more: [],
    out: 'wont-sync',
    expected: 1,
  },
];

for (const { title, args, more, out, expected } of runs) {
  console.log(`\n${title}\n${'-'.repeat(title.length)}\n`);
  const given = [command, ...args, ...more, '--out', join('out', 'demo', out)];
  const { status } = spawnSync(process.execPath, given, { stdio: 'inherit' });
  if (status !== expected) {
    console.error(`The demo expected exit status ${expected}, the command ended with ${status}.`);
    process.exit(1);
  }
}
console.log('\nOpen the .html files in a browser; the .md and .json files beside them say the same.');
