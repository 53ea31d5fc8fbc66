import { compareText, type ImportedFile, type SeenWording, type Survey } from '../../vocabulary.ts';
import type { FileSource } from '../bytes/file-source.ts';
import { InputError } from '../bytes/input-error.ts';
import { openEnd } from './general-wording.ts';
import { guessUnits } from './guess-units.ts';
import { type FileSurvey, type SurveyOptions, surveyFile } from './survey-file.ts';

/** How to survey: `files` are those that could be read as they are; `now` is the year of today. */
export interface FilesSurveyOptions extends Omit<SurveyOptions, 'years' | 'names'> {
  readonly files: readonly ImportedFile[];
  readonly now: number;
}

/**
 * Reads files once more for all that they say, and drafts how each may be read. One that holds no text, or cannot be read
 * at all, is left out: why was said when it was read first.
 */
export async function surveyFiles(
  sources: readonly FileSource[],
  { files, now, ...options }: FilesSurveyOptions,
): Promise<Survey> {
  const first = files.flatMap(({ input }) => input.from ?? []);
  const ofNeighbours = first.length === 0 ? null : new Date(Math.min(...first)).getUTCFullYear();
  const surveys: FileSurvey[] = [];
  const names = sources.map(({ name }) => name);
  for (const source of sources) {
    const found = await surveyed(source, { ...options, years: { ofNeighbours, now }, names });
    if (found !== null) surveys.push(found);
  }
  return {
    files: surveys.map((s) => s.draft),
    units: guessUnits(
      surveys.flatMap((s) => s.units),
      options.phrasebook,
    ),
    wordings: mergedWordings(surveys.flatMap((s) => s.wordings)),
  };
}

async function surveyed(source: FileSource, options: SurveyOptions): Promise<FileSurvey | null> {
  try {
    return await surveyFile(source, options);
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

function together(known: SeenWording, other: SeenWording): SeenWording {
  const count = known.count + other.count;
  if (known.different === undefined || other.different === undefined) return { ...known, count };
  return { ...known, count, different: Math.max(known.different, other.different) };
}

/** Each wording once, with its first place and the count of all files. */
function mergedWordings(all: readonly SeenWording[]): readonly SeenWording[] {
  const found = new Map<string, SeenWording>();
  for (const wording of all) {
    const key = [
      wording.kind,
      wording.kind === 'message' ? wording.pattern : wording.name,
      wording.value,
    ].join('\n');
    const known = found.get(key);
    found.set(key, known === undefined ? wording : together(known, wording));
  }
  return [...found.values()].sort(
    (a, b) =>
      Number(b.isOfRedundancy) - Number(a.isOfRedundancy) ||
      // Of rules the first that fits is used: one that may go on fits more.
      Number(a.pattern.endsWith(openEnd)) - Number(b.pattern.endsWith(openEnd)) ||
      b.count - a.count ||
      compareText(a.name, b.name),
  );
}
