import { parentPort, Worker, workerData } from 'node:worker_threads';
import { Command, CommanderError } from 'commander';
import { terminal } from '../report/escape.ts';
import type { CliCommand } from './cli-command.ts';
import type { Status } from './command.ts';
import { diagnoseCommand } from './diagnose-command.ts';
import { fleetCommand } from './fleet-command.ts';
import { inspectCommand } from './inspect-command.ts';
import { prepareCommand } from './prepare-command.ts';
import { processOutputs } from './process-outputs.ts';
import { siteThread } from './site-thread.ts';
import type { Streams } from './streams.ts';
import { timelineCommand } from './timeline-command.ts';
import { verifyCommand } from './verify-command.ts';
import { watchCommand } from './watch-command.ts';

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
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    const { tellError } = await import('./tell-error.ts');
    return tellError(error, args, streams);
  }
}

function programFor(streams: Streams, end: (status: Status) => void): Command {
  const program = new Command('steadypair')
    .description(
      'Reads the diagnostic exports of redundant controller pairs and says what happened to each pair.',
    )
    .version(STEADYPAIR_VERSION)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => streams.stdout.write(text),
      writeErr: (text) => streams.stderr.write(text),
      outputError: (text, write) => write(`${usageLine(text)}\n`),
    })
    .addHelpText('after', cautions);
  for (const command of commands) command.addTo(program, streams, end);
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

if (workerData === siteThread && parentPort !== null) {
  const port = parentPort;
  void import('./site-threads.ts').then(({ serveSites }) => serveSites(port));
} else if (process.argv[1] !== undefined && !process.argv[1].includes('vitest')) {
  const outputs = processOutputs(process.stdout, process.stderr);
  const newThread = (): Worker => new Worker(new URL(import.meta.url), { workerData: siteThread });
  // Not awaited: the parts of the command are no modules of their own that could be waited for.
  void run(process.argv.slice(2), { ...outputs, newThread }).then((status) => {
    process.exitCode = status;
    // A pipe may refuse what was written last after the command has ended.
    process.on('exit', () => {
      if (!outputs.isWhole()) process.exitCode = 2;
    });
  });
}
