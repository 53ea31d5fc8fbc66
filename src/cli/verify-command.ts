import { bundleOptions } from './bundle-words.ts';
import { cliCommand } from './cli-command.ts';
import type { VerifyOptions } from './verify.ts';

/** `verify`, in the words of `--help`. */
export const verifyCommand = cliCommand<VerifyOptions>({
  name: 'verify',
  says: 'Verify module swaps: did the pair come back redundant?',
  options: {
    pair: { kind: 'text', takes: 'name', says: 'verify only this pair' },
    from: { kind: 'text', takes: 'time', says: 'verify only swaps from this time on' },
    to: { kind: 'text', takes: 'time', says: 'verify only swaps up to this time' },
    job: { kind: 'text', takes: 'file', says: 'work order, people and plan for the report (YAML)' },
    out: { kind: 'text', takes: 'folder', says: 'write reports to this folder (HTML, Markdown, JSON)' },
    ...bundleOptions,
  },
  examples: [
    'verify ro1-poll.csv ro1-journal.csv --zone Europe/Lisbon',
    'verify exports/ --pair RO1 --phrasebook site.yaml --job job.yaml --out reports',
  ],
  run: async (...given) => (await import('./verify.ts')).verifyFiles(...given),
});
