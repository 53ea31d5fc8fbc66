import { cliCommand } from './cli-command.ts';
import type { FleetOptions } from './fleet.ts';

/** `fleet`, in the words of `--help`. */
export const fleetCommand = cliCommand<FleetOptions>({
  name: 'fleet',
  says: 'Compare all pairs: which lose their partner more often, which sync slower, which are ready for a swap?',
  options: {
    group: {
      kind: 'choice',
      takes: 'by',
      says: 'group losses and sync times by',
      choices: ['model', 'firmware', 'site'],
    },
    swaps: { kind: 'whole number', takes: 'count', says: 'number of swaps to forecast (10)' },
    readyDays: {
      kind: 'whole number',
      takes: 'days',
      says: 'days with a ready partner, without a break, before a swap (1)',
    },
    format: {
      kind: 'choice',
      takes: 'format',
      says: 'write the figures of each pair to the file of --out, to be read in place of the logs',
      choices: ['parquet'],
    },
    out: { kind: 'text', takes: 'folder', says: 'write reports to this folder (HTML, Markdown, JSON, CSV)' },
  },
  examples: [
    'fleet exports/ --phrasebook site.yaml',
    'fleet site-a.zip site-b.zip --group site --swaps 40 --json',
  ],
  run: async (...given) => (await import('./fleet.ts')).fleetFiles(...given),
});
