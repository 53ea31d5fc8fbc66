import { InputError } from '../bytes/input-error.ts';

/** How many changes there is memory for. */
export interface MemoryBudget {
  /** Of all files together; two million if it is not known. */
  readonly mostChanges?: number;
  /** Those of the files that were read before. */
  readonly keptChanges?: number;
}

/** More do not fit the memory of an old laptop. Chosen here. */
const usualChanges = 2_000_000;

/** Throws InputError where the changes of a file, with those of the files that were read before, exceed the budget. */
export function checkMemoryBudget(
  name: string,
  changes: number,
  { mostChanges = usualChanges, keptChanges = 0 }: MemoryBudget,
): void {
  if (keptChanges + changes <= mostChanges) return;
  const others = keptChanges === 0 ? '' : ` beside the ${keptChanges} of the others`;
  throw new InputError(
    name,
    `it has too many changes${others} for the memory available: ${mostChanges} at most.`,
    'Split it, read fewer files at once, or add what changes all the time to ignore in the phrasebook.',
  );
}
