import { Command, CommanderError } from 'commander';
import { InputError } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import { type CliCommand, NothingReadable, type Status, sayRefusal } from './command.ts';
import { diagnoseCommand } from './diagnose.ts';
import { fleetCommand } from './fleet.ts';
import { inspectCommand } from './inspect.ts';
import { prepareCommand } from './prepare.ts';
import { processOutputs } from './process-outputs.ts';
import type { Streams } from './streams.ts';
import { timelineCommand } from './timeline.ts';
import { verifyCommand } from './verify.ts';
import { watchCommand } from './watch.ts';

declare const STEADYPAIR_VERSION: string;

/** All commands, in the order of `--help`. */
const commands: readonly CliCommand[] = [
  prepareCommand,
  watchCommand,
  verifyCommand,
  diagnoseCommand,
  fleetCommand,
  timelineCommand,
  inspectCommand,
];

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
  if (error instanceof InputError) {
    stderr.write(`${terminal(sayRefusal(error))}\n`);
    return 2;
  }
  if (error instanceof NothingReadable) {
    stderr.write(`${terminal(error.message)}\n`);
    return 2;
  }
  const what = error instanceof Error ? error.message : String(error);
  stderr.write(
    `steadypair: program error: ${terminal(what)} Run it again with --debug and report the output.\n`,
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
      outputError: (text, write) => write(`${usageLine(text)}\n`),
    })
    .addHelpText('after', cautions);
  for (const command of commands) command.addTo(program, { stdout, stderr }, end);
  return program;
}

/** What commander says, with what the user typed made visible; a suggestion stands on a line of its own. */
function usageLine(text: string): string {
  const said = text
    .replace(/^error: /, 'steadypair: ')
    .trimEnd()
    .replace(/\.$/, '');
  const lines = said.split(/\n(?=\(Did you mean )/).map(terminal);
  return `${lines.join('\n')}. See steadypair --help.`;
}

if (process.argv[1] !== undefined && !process.argv[1].includes('vitest')) {
  const outputs = processOutputs(process.stdout, process.stderr);
  process.exitCode = await run(process.argv.slice(2), outputs);
  // A pipe may refuse what was written last after the command has ended.
  process.on('exit', () => {
    if (!outputs.isWhole()) process.exitCode = 2;
  });
}
