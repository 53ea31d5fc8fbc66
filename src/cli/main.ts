import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { InputError } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import { NothingReadable, type Status } from './command.ts';
import { diagnoseCommand } from './diagnose.ts';
import { fleetCommand } from './fleet.ts';
import { inspectCommand } from './inspect.ts';
import type { Output, Streams } from './streams.ts';
import { timelineCommand } from './timeline.ts';
import { verifyCommand } from './verify.ts';

declare const STEADYPAIR_VERSION: string;

const cautions = `
Cautions: replacing a module on a running process can upset it. Follow the maker's procedure, the site's
permit and management-of-change rules and local codes. A qualified person decides. Never remove a module
on the word of a log alone: check at the cabinet which half is standby.`;

/**
 * Runs the command line and gives its exit status: 0 verified or nothing wrong, 1 not verified or a cause found, 2 usage
 * or nothing readable, 3 inconclusive, too little data or no swap found.
 */
export async function run(args: readonly string[], streams: Streams): Promise<Status> {
  let status: Status = 0;
  const program = programFor(streams, (ended) => {
    status = ended;
  });
  try {
    await program.parseAsync([...args], { from: 'user' });
    return status;
  } catch (error) {
    return tell(error, args, streams);
  }
}

function tell(error: unknown, args: readonly string[], { stderr }: Streams): Status {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof InputError || error instanceof NothingReadable) {
    stderr.write(`${terminal(error.message)}\n`);
    return 2;
  }
  const what = error instanceof Error ? error.message : String(error);
  stderr.write(
    `steadypair: a defect in the program: ${terminal(what)} Run it again with --debug and report what it prints.\n`,
  );
  if (args.includes('--debug') && error instanceof Error) stderr.write(`${error.stack}\n`);
  return 2;
}

function programFor({ stdout, stderr }: Streams, end: (status: Status) => void): Command {
  const program = new Command('steadypair')
    .description(
      'Reads the diagnostic exports of redundant controller pairs and says what happened to each pair.',
    )
    .version(STEADYPAIR_VERSION)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => stdout.write(text),
      writeErr: (text) => stderr.write(text),
      outputError: (text, write) =>
        write(
          `${text
            .replace(/^error: /, 'steadypair: ')
            .trimEnd()
            .replace(/\.$/, '')}. See steadypair --help.\n`,
        ),
    })
    .addHelpText('after', cautions);
  addCommands(program, { stdout, stderr }, end);
  return program;
}

function addCommands(program: Command, streams: Streams, end: (status: Status) => void): void {
  common(program.command('verify'))
    .description('Verify module swaps: did the pair come back redundant?')
    .option('--pair <name>', 'only this pair')
    .option('--from <time>', 'only swaps from this time on')
    .option('--to <time>', 'only up to this time')
    .option('--job <file>', 'work order, people and plan for the report (YAML)')
    .option('--out <folder>', 'write the reports there (HTML, Markdown, JSON)')
    .addHelpText(
      'after',
      examples(
        'verify ro1-poll.csv ro1-journal.csv --zone Europe/Lisbon',
        'verify exports/ --pair RO1 --phrasebook site.yaml --job job.yaml --out reports',
      ),
    )
    .action(async (files: string[], options) => end(await verifyCommand(files, options, streams)));

  addDiagnose(program, streams, end);

  addFleet(program, streams, end);
  common(program.command('timeline'))
    .description('Print every event of every pair, with its bounds and sources.')
    .addOption(new Option('--format <format>', 'how to print it').choices(['csv', 'jsonl', 'parquet']))
    .option('--out <file>', 'write it there')
    .addHelpText(
      'after',
      examples(
        'timeline ro1-poll.csv --format csv',
        'timeline exports/ --phrasebook site.yaml --format parquet --out ro1.parquet',
      ),
    )
    .action(async (files: string[], options) => end(await timelineCommand(files, options, streams)));

  common(program.command('inspect'))
    .description('Say how each file was understood.')
    .option('--draft-phrasebook <file>', 'write a phrasebook to start from there')
    .addHelpText(
      'after',
      examples(
        'inspect ro1-poll.csv --draft-phrasebook site.yaml',
        'inspect exports.zip --phrasebook site.yaml --json',
      ),
    )
    .action(async (files: string[], options) => end(await inspectCommand(files, options, streams)));
}

function addFleet(program: Command, streams: Streams, end: (status: Status) => void): void {
  common(program.command('fleet'))
    .description(
      'Compare all pairs: which lose their partner more often, which sync slower, which are fit for a swap?',
    )
    .addOption(new Option('--group <by>', 'tell sync times apart by').choices(['model', 'firmware', 'site']))
    .option('--swaps <count>', 'how many swaps the forecast is for (10)', wholeNumber)
    .option('--ready-days <days>', 'fit for a swap: ready without a break for so long (1)', wholeNumber)
    .option('--out <folder>', 'write the reports there (HTML, Markdown, JSON, CSV)')
    .addHelpText(
      'after',
      examples(
        'fleet exports/ --phrasebook site.yaml',
        'fleet site-a.zip site-b.zip --group site --swaps 40 --json',
      ),
    )
    .action(async (files: string[], options) => end(await fleetCommand(files, options, streams)));
}

function addDiagnose(program: Command, streams: Streams, end: (status: Status) => void): void {
  common(program.command('diagnose'))
    .description(
      'Say why a pair will not synchronise: how far it gets, what the logs speak for, what to check next.',
    )
    .option('--pair <name>', 'this pair (the one that is worst now)')
    .option('--out <folder>', 'write the reports there (HTML, Markdown, JSON)')
    .addHelpText(
      'after',
      examples(
        'diagnose pretreat-poll.csv pretreat-journal.csv --zone Europe/Lisbon',
        'diagnose exports/ --pair PRETREAT --phrasebook site.yaml --out reports',
      ),
    )
    .action(async (files: string[], options) => end(await diagnoseCommand(files, options, streams)));
}

function common(command: Command): Command {
  return command
    .argument('<files...>', 'exports, folders or archives that hold them, or patterns with *')
    .option('--phrasebook <file>', "what the site's wording means (YAML)")
    .option('--zone <zone>', 'IANA time zone of stamps that name none, such as Europe/Lisbon')
    .addOption(new Option('--order <order>', 'order of day and month').choices(['day-first', 'month-first']))
    .option('--year <year>', 'year of the first row where stamps have none', wholeNumber)
    .option('--hold <seconds>', 'how long a state must hold to be settled (60)', wholeNumber)
    .option('--align-clocks', 'set clocks that disagree to that of the reference')
    .option('--reference <file>', 'the file whose clock counts (the first with exact entries)')
    .option('--json', 'print one JSON document')
    .option('--debug', 'print the stack of a defect')
    .exitOverride();
}

function wholeNumber(text: string): number {
  if (!/^\d{1,6}$/.test(text)) throw new InvalidArgumentError('It must be a whole number.');
  return Number(text);
}

function examples(first: string, second: string): string {
  return `\nExamples:\n  steadypair ${first}\n  steadypair ${second}`;
}

function outputOf(stream: NodeJS.WriteStream): Output {
  return {
    write: (text) => {
      stream.write(text);
    },
    isTerminal: stream.isTTY === true && process.env.NO_COLOR === undefined,
  };
}

/** A reader that closes early, as `head` does, is no fault. */
function ignoreClosedPipe(error: Error & { readonly code?: string }): void {
  if (error.code !== 'EPIPE') throw error;
}

if (process.argv[1] !== undefined && !process.argv[1].includes('vitest')) {
  process.stdout.on('error', ignoreClosedPipe);
  process.exitCode = await run(process.argv.slice(2), {
    stdout: outputOf(process.stdout),
    stderr: outputOf(process.stderr),
  });
}
