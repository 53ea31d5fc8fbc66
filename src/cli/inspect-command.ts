import { cliCommand } from './cli-command.ts';
import type { InspectOptions } from './inspect.ts';

/** `inspect`, in the words of `--help`. */
export const inspectCommand = cliCommand<InspectOptions>({
  name: 'inspect',
  says: 'Show how each file was read.',
  options: {
    draftPhrasebook: { kind: 'text', takes: 'file', says: 'write a phrasebook to start from to this file' },
    find: {
      kind: 'text',
      takes: 'words',
      says: 'list the wordings that contain all of these words, with a rule for each',
    },
  },
  examples: [
    'inspect ro1-poll.csv --draft-phrasebook site.yaml',
    'inspect exports.zip --phrasebook site.yaml --find "partner lost"',
  ],
  run: async (...given) => (await import('./inspect.ts')).inspectFiles(...given),
});
