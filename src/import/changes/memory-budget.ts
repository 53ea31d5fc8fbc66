import { InputError } from '../bytes/input-error.ts';

/** How many changes there is memory for. */
export interface MemoryBudget {
  /** Of all files together; two million if it is not known. */
  readonly mostChanges?: number;
  /** What the files that were read before take of it. */
  readonly keptChanges?: number;
}

/** More do not fit the memory of an old laptop. Chosen here. */
const usualChanges = 2_000_000;

/** A unit takes as much of the heap as so many changes. Measured on 30 November 2026: polls of 5,000 and 10,000 units needed 25 kB for each. */
const changesPerUnit = 40;

/** What so many changes and units take of the budget, as a number of changes. */
export function memoryTaken(changes: number, units: number): number {
  return changes + changesPerUnit * units;
}

/** Throws InputError where what a file takes, with the files that were read before, exceeds the budget. */
export function checkMemoryBudget(
  name: string,
  taken: number,
  { mostChanges = usualChanges, keptChanges = 0 }: MemoryBudget,
): void {
  if (keptChanges + taken <= mostChanges) return;
  const others = keptChanges === 0 ? '' : ` beside the ${keptChanges} of the others`;
  throw new InputError(
    name,
    `it has too many changes or units${others} for the memory available: ${mostChanges} changes at most, a unit counted as ${changesPerUnit}.`,
    'Split it, read fewer files at once, or add what changes all the time to ignore in the phrasebook.',
  );
}
