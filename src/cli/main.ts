import { fstatSync } from 'node:fs';
import { parentPort, Worker, workerData } from 'node:worker_threads';
import { Command, CommanderError } from 'commander';
import { InputError } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import { type CliCommand, NothingReadable, type Status, sayRefusal } from './command.ts';
import { diagnoseCommand } from './diagnose.ts';
import { fleetCommand } from './fleet.ts';
import { inspectCommand } from './inspect.ts';
import { prepareCommand } from './prepare.ts';
import { serveSites, siteThread } from './site-threads.ts';
import type { Output, Screen, Streams } from './streams.ts';
import { identityOf } from './things.ts';
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
      outputError: (text, write) =>
        write(
          `${text
            .replace(/^error: /, 'steadypair: ')
            .trimEnd()
            .replace(/\.$/, '')}. See steadypair --help.\n`,
        ),
    })
    .addHelpText('after', cautions);
  for (const command of commands) command.addTo(program, streams, end);
  return program;
}

function outputOf(stream: NodeJS.WriteStream & { readonly fd: number }): Output {
  return {
    write: (text) => {
      stream.write(text);
    },
    goesTo: fileBehind(stream.fd),
    isTerminal: stream.isTTY === true && process.env.NO_COLOR === undefined,
    ...(stream.isTTY === true && process.env.TERM !== 'dumb' ? { screen: screenOf(stream) } : {}),
  };
}

function screenOf(stream: NodeJS.WriteStream): Screen {
  return {
    columns: () => stream.columns,
    rows: () => stream.rows,
    onResize(tell) {
      stream.on('resize', tell);
      return () => void stream.off('resize', tell);
    },
  };
}

/** The file that a shell sent a stream to. */
function fileBehind(descriptor: number): string | null {
  const found = fstatSync(descriptor, { bigint: true });
  return found.isFile() ? identityOf(found) : null;
}

/** A reader that closes early, as `head` does, is no fault. */
function ignoreClosedPipe(error: Error & { readonly code?: string }): void {
  if (error.code !== 'EPIPE') throw error;
}

if (workerData === siteThread && parentPort !== null) serveSites(parentPort);
else if (process.argv[1] !== undefined && !process.argv[1].includes('vitest')) {
  process.stdout.on('error', ignoreClosedPipe);
  process.exitCode = await run(process.argv.slice(2), {
    stdout: outputOf(process.stdout),
    stderr: outputOf(process.stderr),
    newThread: () => new Worker(new URL(import.meta.url), { workerData: siteThread }),
  });
}
