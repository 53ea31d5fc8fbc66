import { InputError } from '../pipeline.ts';
import { terminal } from '../report/escape.ts';
import { NothingReadable, type Status, sayRefusal } from './command.ts';
import { OutputRefused } from './output-refused.ts';
import type { Streams } from './streams.ts';
import { refuseWriting } from './system-refusal.ts';

/** Tells on stderr what a command failed of; gives its exit status. */
export function tellError(
  error: unknown,
  args: readonly string[],
  { stderr }: Pick<Streams, 'stderr'>,
): Status {
  if (error instanceof OutputRefused) return tellError(refusalOf(error.cause), args, { stderr });
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

/** The line for what the output would not take; what the system did not say is a defect. */
function refusalOf(error: unknown): unknown {
  try {
    return refuseWriting('the output', error);
  } catch (refusal) {
    return refusal;
  }
}
