import type { FleetFigure } from './fleet-figures.ts';
import type { ShownTable } from './shown-table.ts';

/** One question of the review: its pictures, and the same figures as a table. */
export interface FleetSection {
  readonly id: string;
  readonly title: string;
  readonly figures: readonly FleetFigure[];
  readonly table: ShownTable;
  /** What is counted, by which method (with its source), on how much, and what would make it wrong. */
  readonly howComputed: string;
}

/** What stands before it. */
export const howComputedTitle = 'How this was computed';
