import { fieldNotes } from './field-notes.ts';
import type { Importer } from './importer.ts';
import { journal } from './journal.ts';
import { lines } from './lines.ts';
import { readings } from './readings.ts';
import { snapshots } from './snapshots.ts';
import { wide } from './wide.ts';

/** All importers, in the order in which people are told of them. */
export const importers: readonly Importer[] = [readings, snapshots, wide, journal, lines, fieldNotes];
