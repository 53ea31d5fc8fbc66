import { fitsFile, pathOf } from './file-names.ts';
import type { Phrasebook } from './phrasebook-rules.ts';

/** True if a phrasebook takes two names of a file alike: the same rule, the same subject, the same messages. */
export function namedAlike({ files, messages }: Phrasebook, one: string, other: string): boolean {
  const rule = files.find(({ match }) => fitsFile(match, one));
  if (rule !== files.find(({ match }) => fitsFile(match, other))) return false;
  const said = (name: string): string => JSON.stringify(rule?.path?.match(pathOf(name)) ?? null);
  if (said(one) !== said(other)) return false;
  return messages.every(
    ({ only: { file } }) => file === undefined || fitsFile(file, one) === fitsFile(file, other),
  );
}
