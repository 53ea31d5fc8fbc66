import type { SeenWording } from '../vocabulary.ts';
import { importers } from './layouts/importers.ts';
import { parsePhrasebook } from './phrasebook/phrasebook.ts';
import type { Phrasebook } from './phrasebook/phrasebook-rules.ts';
import { type LessonPreview, previewLessons } from './phrasebook/preview-lesson.ts';
import { addLesson, addLessons, type Lesson } from './phrasebook/teach-phrasebook.ts';

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

/** The same with several lessons, the first first. Throws InputError. */
export function teachAll(file: string, yaml: string | null, lessons: readonly Lesson[]): string {
  return addLessons(file, yaml, lessons, layouts);
}

/** What each of some lessons would do, as `previewLessons` says. */
export function previewOf(
  yaml: string | null,
  lessons: readonly Lesson[],
  wordings: readonly SeenWording[],
): readonly LessonPreview[] {
  return previewLessons(yaml, lessons, wordings, layouts);
}
