// `npm run demo`: verifies the two swaps of the invented site and says where the reports are.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

const command = join('dist', 'steadypair.mjs');
if (!existsSync(command)) {
  console.error('dist/steadypair.mjs: not built yet. Run npm run build.');
  process.exit(2);
}

const swaps = [
  ['clean-swap', 'A swap of both modules of RO1, seen by a poll, a journal, a text log and notes', 0],
  ['bad-swap', 'A swap of one module of RO3 that must not be verified', 1],
];

for (const [folder, title, expected] of swaps) {
  const logs = join('samples', 'marrow-bay', folder);
  const out = join('out', 'demo', folder);
  console.log(`\n${title}\n${'-'.repeat(title.length)}\n`);
  const args = [
    command,
    'verify',
    logs,
    '--phrasebook',
    join(logs, 'phrasebook.yaml'),
    '--job',
    join(logs, 'job.yaml'),
    '--out',
    out,
  ];
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' });
  if (status !== expected) {
    console.error(`The demo expected exit status ${expected}, the command ended with ${status}.`);
    process.exit(1);
  }
}
console.log('\nOpen the .html files in a browser; the .md and .json files beside them say the same.');
