import type { NewHasher } from './bytes/file-source.ts';
import type { MemoryBudget } from './changes/memory-budget.ts';
import type { OrderOfAlike } from './clock/choose-order.ts';
import type { DateOrder } from './clock/stamp.ts';
import type { Phrasebook, UsedRules } from './phrasebook/phrasebook-rules.ts';

/** How to read a file. */
export interface ImportOptions extends MemoryBudget {
  readonly phrasebook: Phrasebook;
  /** Takes the rules that were of use, over all files of a run. */
  readonly used?: UsedRules;
  /** What the user says; `null` leaves it to the phrasebook and the file. */
  readonly zone: string | null;
  readonly order: DateOrder | null;
  readonly year: number | null;
  /** For dates that can be read both ways, once the files that settle it are known. */
  readonly orderOfAlike?: OrderOfAlike;
  /** Told of an order of day and month that the dates of a file settle. */
  readonly onOrder?: (file: string, order: DateOrder) => void;
  /** Milliseconds UTC of a day that the other files speak of, for notes without a date and stamps without a year. */
  readonly neighbour: number | null;
  /** Names of pairs of which other files name a half: here a bare word may be one of them. */
  readonly knownPairs?: ReadonlySet<string>;
  readonly sha256: NewHasher;
  /** Reads tables as text alone, as the fast lane must come to the same. */
  readonly isGeneralOnly?: boolean;
  readonly onProgress?: (bytes: number, rows: number) => void;
}
