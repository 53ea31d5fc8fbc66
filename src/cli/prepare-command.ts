import { cliCommand } from './cli-command.ts';
import type { PrepareOptions } from './prepare.ts';

/** `prepare`, in the words of `--help`. */
export const prepareCommand = cliCommand<PrepareOptions>({
  name: 'prepare',
  says: 'Make the work sheet of a pair before a swap: which half is standby, is the pair ready, what comes when.',
  options: {
    pair: { kind: 'text', takes: 'name', says: 'pair to prepare for (the only one, or the one planned)' },
    job: { kind: 'text', takes: 'file', says: 'work order, people and plan for the sheet (YAML)' },
    draftJob: { kind: 'text', takes: 'file', says: 'write a job file to fill in to this file' },
    out: { kind: 'text', takes: 'folder', says: 'write the sheet to this folder (HTML, Markdown, JSON)' },
    allowOld: { kind: 'flag', says: 'name the standby half from lines older than a day, too' },
  },
  examples: [
    'prepare ro1-poll.csv ro1-journal.csv --zone Europe/Lisbon --draft-job job.yaml',
    'prepare exports/ --pair RO1 --phrasebook site.yaml --job job.yaml --out sheets',
  ],
  run: async (...given) => (await import('./prepare.ts')).prepareFiles(...given),
});
