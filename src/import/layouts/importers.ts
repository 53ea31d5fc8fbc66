import { fieldNotes } from './field-notes.ts';
import type { Importer } from './importer.ts';
import { journal } from './journal.ts';
import { lines } from './lines.ts';
import { readings } from './readings.ts';
import { snapshots } from './snapshots.ts';

/** All importers; the first that fits reads the file. */
export const importers: readonly Importer[] = [readings, journal, snapshots, lines, fieldNotes];
