import { InputError, readJob, readPhrasebook } from '../src/pipeline.ts';
import { compareText, type Job } from '../src/vocabulary.ts';
import { bytesOf } from './browser-files.ts';
import type { ChosenPhrasebook, NamedFile, NamedText } from './protocol.ts';

/** A YAML file that was given among the logs. */
export interface YamlText extends NamedText {
  /** `null`: a phrasebook. */
  readonly job: Job | null;
}

/** Logs in the order of their names, as the command takes a folder; YAML files are jobs or phrasebooks. */
export async function sorted<F extends NamedFile>(
  files: readonly F[],
): Promise<{
  readonly texts: readonly YamlText[];
  readonly refused: readonly InputError[];
  readonly logs: readonly F[];
}> {
  const ordered = files.toSorted((a, b) => compareText(a.name, b.name));
  const isYaml = ({ name }: NamedFile): boolean => /\.ya?ml$/i.test(name);
  const found = await Promise.all(
    ordered.filter(isYaml).map(async (named) => {
      const bytes = await bytesOf(named).slice(0, named.file.size);
      return attempt(() => yamlText(named.name, new TextDecoder().decode(bytes)));
    }),
  );
  return {
    texts: found.flatMap((f) => (f instanceof InputError ? [] : [f])),
    refused: found.filter((f) => f instanceof InputError),
    logs: ordered.filter((file) => !isYaml(file)),
  };
}

/** A YAML file that is neither a job nor a phrasebook stands in the way of nothing. */
function attempt(read: () => YamlText): YamlText | InputError {
  try {
    return read();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}

/**
 * The phrasebook to read with: the one that a person taught or loaded, else the last among the files. One is used; those that
 * the chosen one took the place of need no word.
 */
export function phrasebookOf(
  texts: readonly YamlText[],
  chosen: ChosenPhrasebook | null,
): { readonly phrasebook: NamedText | null; readonly unused: readonly InputError[] } {
  const found = texts.filter(({ job }) => job === null);
  const last = found.at(-1);
  const phrasebook =
    chosen === null ? (last === undefined ? null : { file: last.file, text: last.text }) : chosen.text;
  const known = new Set([phrasebook?.file, ...(chosen?.instead ?? [])]);
  const unused = found
    .filter(({ file }) => !known.has(file))
    .map(({ file }) => {
      const what = `it is a phrasebook beside ${phrasebook?.file ?? 'another'}, and one is used at a time.`;
      return new InputError(file, what, 'Put its rules into one phrasebook, or load it under Sources.');
    });
  return { phrasebook, unused };
}

/** A job if its keys say so: the two kinds of file share none but `site`. */
function yamlText(file: string, text: string): YamlText {
  if (/^(?:workOrder|technician|reviewer|plan)\s*:/m.test(text))
    return { file, text, job: readJob(file, text) };
  readPhrasebook(file, text);
  return { file, text, job: null };
}
