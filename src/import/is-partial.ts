import type { ImportedFile } from '../vocabulary.ts';

/** Whether something was given that is in no answer: files that were left out, rows not recognised or rejected. */
export function isPartial({
  files,
  failures,
}: {
  readonly files: readonly ImportedFile[];
  readonly failures: readonly unknown[];
}): boolean {
  return failures.length > 0 || files.some(({ input: { rows } }) => rows.unmatched + rows.rejected > 0);
}
