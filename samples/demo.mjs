// `npm run demo`: verifies the two swaps of the invented site, diagnoses the pair that will not
// synchronise, and says where the reports are.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

const command = join('dist', 'steadypair.mjs');
if (!existsSync(command)) {
  console.error('dist/steadypair.mjs: not built yet. Run npm run build.');
  process.exit(2);
}

const stories = [
  [
    'verify',
    'clean-swap',
    'A swap of both modules of RO1, seen by a poll, a journal, a text log and notes',
    0,
  ],
  ['verify', 'bad-swap', 'A swap of one module of RO3 that must not be verified', 1],
  ['diagnose', 'wont-sync', 'A pair that will not synchronise: PRETREAT', 1],
];

for (const [job, folder, title, expected] of stories) {
  const logs = join('samples', 'marrow-bay', folder);
  const out = join('out', 'demo', folder);
  console.log(`\n${title}\n${'-'.repeat(title.length)}\n`);
  const args = [command, job, logs, '--phrasebook', join(logs, 'phrasebook.yaml'), '--out', out];
  if (job === 'verify') args.push('--job', join(logs, 'job.yaml'));
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' });
  if (status !== expected) {
    console.error(`The demo expected exit status ${expected}, the command ended with ${status}.`);
    process.exit(1);
  }
}
console.log('\nOpen the .html files in a browser; the .md and .json files beside them say the same.');
