import { InputError, type StoredFile } from '../pipeline.ts';
import type { Found } from './find-files.ts';
import type { Output } from './streams.ts';

/**
 * What is read must not grow by what is written. A file that the shell made for the output is empty, and lies among the logs
 * of a folder by chance; one that holds something would be spoilt. Throws InputError for that, unless `grows`: what it holds is
 * this run's.
 */
export function withoutOutputs(
  found: Pick<Found, 'files' | 'notices' | 'identities'>,
  outputs: readonly Output[],
  grows = false,
): Pick<Found, 'files' | 'notices'> {
  const isOutput = ({ name }: StoredFile): boolean =>
    outputs.some(({ goesTo }) => typeof goesTo === 'string' && goesTo === found.identities.get(name));
  const [output] = found.files.filter(isOutput);
  if (output === undefined) return found;
  if (output.bytes > 0 && !grows)
    throw new InputError(
      'the output',
      'it would overwrite one of the files to read.',
      'Redirect it to another file.',
    );
  return {
    files: found.files.filter((file) => !isOutput(file)),
    notices: [...found.notices, `${output.name}: skipped: the output is written there.`],
  };
}
