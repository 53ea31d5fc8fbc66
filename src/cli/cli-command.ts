import type { Command } from 'commander';
import type { CommonOptions, Status } from './command.ts';
import { addOptions, type OptionsFor } from './options.ts';
import type { Streams } from './streams.ts';

const commonOptions: OptionsFor<CommonOptions> = {
  phrasebook: { kind: 'text', takes: 'file', says: "meaning of the site's wording (YAML)" },
  zone: {
    kind: 'text',
    takes: 'zone',
    says: 'IANA time zone of timestamps without one, such as Europe/Lisbon',
  },
  order: {
    kind: 'choice',
    takes: 'order',
    says: 'order of day and month',
    choices: ['day-first', 'month-first'],
  },
  year: { kind: 'whole number', takes: 'year', says: 'year of the first row if timestamps have none' },
  hold: {
    kind: 'whole number',
    takes: 'seconds',
    says: 'how long a state must last to count as settled (60)',
  },
  alignClocks: { kind: 'flag', says: 'correct clocks that differ from the reference' },
  reference: {
    kind: 'text',
    takes: 'file',
    says: 'file with the reference clock (the first with exact entries)',
  },
  json: { kind: 'flag', says: 'print one JSON document' },
  debug: { kind: 'flag', says: 'print the stack trace of a program error' },
};

/** What a command is: its name, its words for `--help`, its own options beside the common ones, and what it does. */
interface CommandParts<Options extends CommonOptions> {
  readonly name: string;
  readonly says: string;
  readonly options: OptionsFor<Omit<Options, keyof CommonOptions>>;
  /** Two real command lines. */
  readonly examples: readonly [string, string];
  run(paths: readonly string[], options: Options, streams: Streams): Promise<Status>;
}

/** A command that can be added to the program; `end` is told its exit status. */
export interface CliCommand {
  addTo(program: Command, streams: Streams, end: (status: Status) => void): void;
}

/** Makes a command of its parts. */
export function cliCommand<Options extends CommonOptions>(parts: CommandParts<Options>): CliCommand {
  const { name, says, options, examples, run } = parts;
  return {
    addTo(program, streams, end) {
      const command = program
        .command(name)
        .description(says)
        .argument('<files...>', 'exports, folders or archives that contain them, or patterns with *');
      addOptions(addOptions(command, commonOptions), options)
        .exitOverride()
        .addHelpText('after', `\nExamples:\n  steadypair ${examples.join('\n  steadypair ')}`)
        .action(async (files: string[], given) => end(await run(files, given, streams)));
    },
  };
}
