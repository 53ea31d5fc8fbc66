import { bundleOptions } from './bundle-words.ts';
import { cliCommand } from './cli-command.ts';
import type { WatchOptions } from './watch-turns.ts';

/** `watch`, in the words of `--help`. */
export const watchCommand = cliCommand<WatchOptions>({
  name: 'watch',
  says: 'Watch module swaps as their logs grow: what is awaited, and its limit',
  options: {
    pair: { kind: 'text', takes: 'name', says: 'watch only this pair, also before its first removal' },
    job: { kind: 'text', takes: 'file', says: 'work order, people and plan for the report (YAML)' },
    out: {
      kind: 'text',
      takes: 'folder',
      says: 'keep the reports of verify in this folder, whole at any moment',
    },
    ...bundleOptions,
  },
  examples: [
    'watch /mnt/export --pair RO1 --phrasebook site.yaml --out reports',
    'watch ro1-poll.csv ro1-events.log --json',
  ],
  run: async (...given) => (await import('./watch.ts')).watchGiven(...given),
});
