import { cliCommand } from './cli-command.ts';
import type { TimelineOptions } from './timeline.ts';

/** `timeline`, in the words of `--help`. */
export const timelineCommand = cliCommand<TimelineOptions>({
  name: 'timeline',
  says: 'Print every event of every pair, with its bounds and sources.',
  options: {
    format: {
      kind: 'choice',
      takes: 'format',
      says: 'output format',
      choices: ['csv', 'jsonl', 'parquet'],
    },
    out: { kind: 'text', takes: 'file', says: 'write to this file' },
  },
  examples: [
    'timeline ro1-poll.csv --format csv',
    'timeline exports/ --phrasebook site.yaml --format parquet --out ro1.parquet',
  ],
  run: async (...given) => (await import('./timeline.ts')).timelineFiles(...given),
});
