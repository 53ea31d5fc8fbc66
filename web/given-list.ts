import type {
  ChosenPhrasebook,
  FollowedFile,
  GivenFile,
  GivenModel,
  NamedFile,
  NamedText,
} from './protocol.ts';

/** The files before a step, and what the step was, such as `Removed ro1.csv`. */
export interface FileStep {
  readonly says: string;
  readonly files: readonly GivenFile[];
}

/** What is to be read, and how a person came to it. */
export interface ToRead {
  readonly files: readonly GivenFile[];
  /** The last step last. */
  readonly fileSteps: readonly FileStep[];
  /** `null`: the one among the files. */
  readonly phrasebook: ChosenPhrasebook | null;
  /** The phrasebooks before each lesson, and before each that was loaded; the last before the last. */
  readonly lessonSteps: readonly (ChosenPhrasebook | null)[];
  readonly isAligned: boolean | null;
}

/** Nothing was given. */
export const nothingToRead: ToRead = {
  files: [],
  fileSteps: [],
  phrasebook: null,
  lessonSteps: [],
  isAligned: null,
};

/** How files are taken: beside those that are there, or in place of them. */
export type How = 'add' | 'replace';

/** Takes files; one takes the place of another of its name. What was taught stays. `number` gives each a number of its own. */
export function taking(before: ToRead, more: readonly NamedFile[], how: How, number: () => number): ToRead {
  // Of two with one name the last counts.
  const byName = new Map(more.map((named) => [named.name, named]));
  const fresh = [...byName.values()].map((named) => ({ ...named, id: number() }));
  const stay = how === 'replace' ? [] : before.files.filter(({ name }) => !byName.has(name));
  const says = `${how === 'add' ? 'Added' : 'Replaced all files by'} ${sayNames(fresh)}`;
  const isTaught = before.lessonSteps.length > 0;
  return {
    ...stepped(before, [...stay, ...fresh], says),
    isAligned: how === 'add' ? before.isAligned : null,
    phrasebook: how === 'add' || isTaught ? before.phrasebook : null,
  };
}

function sayNames(files: readonly NamedFile[]): string {
  const [first] = files;
  return files.length === 1 && first !== undefined ? first.name : `${files.length} files`;
}

/**
 * With files of a folder that is followed in place of those of their names; one that grew keeps its number. What comes by itself is
 * no step to be undone.
 */
export function followingOn(before: ToRead, more: readonly FollowedFile[], number: () => number): ToRead {
  const numbers = new Map(before.files.map(({ name, id }) => [name, id]));
  const names = new Set(more.map(({ name }) => name));
  const stay = before.files.filter(({ name }) => !names.has(name));
  const given = more.map(({ name, file, hasGrown }): GivenFile => {
    const known = hasGrown ? numbers.get(name) : undefined;
    return { name, file, life: 'grows', id: known ?? number() };
  });
  return { ...before, files: [...stay, ...given] };
}

/** With the files of a folder that is followed as they are now: those that are gone from it, or all, since it is not followed any more. */
export function livesNow(before: ToRead, lifeOf: (name: string) => NamedFile['life']): ToRead {
  const files = before.files.map((given): GivenFile => {
    const life = given.life === undefined ? undefined : lifeOf(given.name);
    return life === undefined ? given : { ...given, life };
  });
  return { ...before, files };
}

/** With all files once more, each as if it was given now. */
export function readingAgain(before: ToRead, number: () => number): ToRead {
  return { ...before, files: before.files.map((given) => ({ ...given, id: number() })) };
}

/** Without a file. */
export function removing(before: ToRead, name: string): ToRead {
  return stepped(
    before,
    before.files.filter((file) => file.name !== name),
    `Removed ${name}`,
  );
}

function stepped(before: ToRead, files: readonly GivenFile[], says: string): ToRead {
  // Before the first files there is nothing to go back to.
  const step = before.files.length === 0 ? [] : [{ says, files: before.files }];
  return { ...before, files, fileSteps: [...before.fileSteps, ...step] };
}

/** Before the last step with files. */
export function filesUndone(before: ToRead): ToRead {
  const last = before.fileSteps.at(-1);
  return last === undefined
    ? before
    : { ...before, files: last.files, fileSteps: before.fileSteps.slice(0, -1) };
}

/** With another phrasebook, in place of `old`, the one that is in use; `null`: without one. */
export function loading(before: ToRead, text: NamedText | null, old: NamedText | null): ToRead {
  const instead = [...(before.phrasebook?.instead ?? []), ...(old === null ? [] : [old.file])];
  return {
    ...before,
    phrasebook: { text, instead },
    lessonSteps: [...before.lessonSteps, before.phrasebook],
  };
}

/** With a lesson in the phrasebook: `text` is the whole of it. */
export function teaching(before: ToRead, text: string, old: NamedText | null): ToRead {
  const file = old?.file ?? 'phrasebook.yaml';
  return loading(before, { file, text }, old);
}

/** Before the last lesson, or before the phrasebook that was loaded last. */
export function lessonUndone(before: ToRead): ToRead {
  return {
    ...before,
    phrasebook: before.lessonSteps.at(-1) ?? null,
    lessonSteps: before.lessonSteps.slice(0, -1),
  };
}

/** So many files of one kind are said one by one. */
const mostSaid = 3;

/** What must be said of files that were given just now: which replaced another of its name, and which were there already. */
export function changesSaid(before: readonly GivenModel[], after: readonly GivenModel[]): readonly string[] {
  const known = new Set(before.map(({ id }) => id));
  const fresh = after.filter(({ id }) => !known.has(id));
  const old = new Map(before.map((one) => [one.name, one.sha256]));
  const isSame = ({ name, sha256 }: GivenModel): boolean => sha256 !== null && old.get(name) === sha256;
  const named = fresh.filter(({ name }) => old.has(name));
  const replaced = named.filter((one) => !isSame(one));
  const twins = fresh.filter(({ twin }) => twin !== null);
  return [
    ...few(named.filter(isSame), {
      one: ({ name }) => `${name} was given before with the same content: nothing changed.`,
      many: (count) => `${count} files were given before with the same content.`,
    }),
    ...few(replaced, {
      one: ({ name }) => `${name} replaces the file of that name given before: its content differs.`,
      many: (count) => `${count} files replace those of the same names given before: their content differs.`,
    }),
    ...few(
      twins.filter((one) => !isSame(one)),
      {
        one: ({ name, twin }) => `${name} has the same content as ${twin} and is used once.`,
        many: (count) =>
          `${count} files have the same content as others and are used once: Sources lists them.`,
      },
    ),
  ];
}

function few(
  all: readonly GivenModel[],
  say: { readonly one: (file: GivenModel) => string; readonly many: (count: number) => string },
): readonly string[] {
  return all.length > mostSaid ? [say.many(all.length)] : all.map(say.one);
}
