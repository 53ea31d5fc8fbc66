import { bundleOptions } from './bundle-words.ts';
import { cliCommand } from './cli-command.ts';
import type { DiagnoseOptions } from './diagnose.ts';

/** `diagnose`, in the words of `--help`. */
export const diagnoseCommand = cliCommand<DiagnoseOptions>({
  name: 'diagnose',
  says: 'Say why a pair will not synchronise: how it stands, the most likely cause, what to check next.',
  options: {
    pair: { kind: 'text', takes: 'name', says: 'pair to diagnose (the worst one now)' },
    out: { kind: 'text', takes: 'folder', says: 'write reports to this folder (HTML, Markdown, JSON)' },
    ...bundleOptions,
  },
  examples: [
    'diagnose pretreat-poll.csv pretreat-journal.csv --zone Europe/Lisbon',
    'diagnose exports/ --pair PRETREAT --phrasebook site.yaml --out reports',
  ],
  run: async (...given) => (await import('./diagnose.ts')).diagnoseFiles(...given),
});
