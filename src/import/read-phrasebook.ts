import type { UnmatchedWording } from '../vocabulary.ts';
import { importers } from './layouts/importers.ts';
import { parsePhrasebook } from './phrasebook/phrasebook.ts';
import type { Phrasebook } from './phrasebook/phrasebook-rules.ts';
import { addLesson, countTaught, type Lesson } from './phrasebook/teach-phrasebook.ts';

/** A phrasebook may name every layout there is. */
const layouts: readonly string[] = importers.map(({ id }) => id);

/** The phrasebook of a site with the built-in one after it, as `parsePhrasebook` reads it. Throws InputError. */
export function readPhrasebook(file: string, yaml: string | null): Phrasebook {
  return parsePhrasebook(file, yaml, layouts);
}

/** The phrasebook's text with a lesson in it, as `addLesson` puts it there. Throws InputError. */
export function teachPhrasebook(file: string, yaml: string | null, lesson: Lesson): string {
  return addLesson(file, yaml, lesson, layouts);
}

/** How many of the rows that are not recognised a lesson would use, as `countTaught` counts. Throws InputError. */
export function rowsTaught(lesson: Lesson, unmatched: readonly UnmatchedWording[]): number {
  return countTaught(lesson, unmatched, layouts);
}
