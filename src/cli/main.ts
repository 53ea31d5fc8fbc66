import { fstatSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import type { CliCommand } from './cli-command.ts';
import type { Status } from './command.ts';
import { diagnoseCommand } from './diagnose-command.ts';
import { fleetCommand } from './fleet-command.ts';
import { identityOf } from './identity.ts';
import { inspectCommand } from './inspect-command.ts';
import { prepareCommand } from './prepare-command.ts';
import type { Output, Screen, Streams } from './streams.ts';
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
  for (const command of commands) command.addTo(program, { stdout, stderr }, end);
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

if (process.argv[1] !== undefined && !process.argv[1].includes('vitest')) {
  process.stdout.on('error', ignoreClosedPipe);
  const streams = { stdout: outputOf(process.stdout), stderr: outputOf(process.stderr) };
  // Not awaited: the parts of the command are no modules of their own that could be waited for.
  void run(process.argv.slice(2), streams).then((status) => {
    process.exitCode = status;
  });
}
