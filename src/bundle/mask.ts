import { type FileSource, InputError, readJob, readPhrasebook } from '../pipeline.ts';
import { compareText } from '../vocabulary.ts';
import type { Answer, BundleCase } from './case.ts';
import { type Name, nameFinder } from './find-names.ts';
import { detectEncoding, readHead } from './inside.ts';
import { masker, standInFor, withWordsMasked } from './mask-words.ts';
import { namesInText } from './names-in-text.ts';
import { namesOfCase } from './names-of-case.ts';
import { ordinaryWords } from './ordinary-words.ts';
import { type NameSearch, nameLeft, searchNames } from './search-names.ts';
import { type StandIn, standInMaker } from './stand-ins.ts';
import { changedLog, eachPiece } from './text-bytes.ts';

/** Stand-ins for the names of a case, the same everywhere. */
export interface Mask {
  text(text: string): string;
  /** The name of a file: no word of it is an ordinary one. */
  fileName(name: string): string;
  /** A phrasebook, whose patterns of units may hold parts of names. */
  phrasebook(text: string): string;
  log(source: FileSource): FileSource;
  /** A name that is left in a text; `null`: none. */
  leftIn(text: string): string | null;
  /** Looks for names that are left, in any encoding. `isOurs`: its numbers are not those of a log. */
  search(isOurs: boolean): NameSearch;
  /** Originals and stand-ins as JSON. */
  readonly key: string;
}

/** The mask of a case, and the case without what is no text. */
export interface Masked {
  readonly mask: Mask;
  readonly usable: BundleCase;
}

/** Throws InputError for what cannot be masked: a stored timeline, or a name for which there is no stand-in. */
export async function maskOf(one: BundleCase, answer: Answer, place: string): Promise<Masked> {
  const { usable, encodings } = await textsAlone(one, answer, place);
  const encodingOf = ({ name }: FileSource): string => encodings.get(name) ?? 'utf-8';
  const ordinary = ordinaryWords(one.phrasebook);
  const names = await allNames(usable, answer, encodingOf, ordinary);
  const { standIns, maker } = await distinct(names, usable, encodingOf, { ordinary, place });
  const text = masker(standIns);
  const words = new Set(
    standIns
      .filter(({ kind }) => kind === 'pair' || kind === 'unit')
      .flatMap(({ original }) => [...original.matchAll(/\p{L}{2,}/gu)].map(([word]) => word.toLowerCase()))
      .filter((word) => !ordinary.has(word)),
  );
  const left = nameLeft(standIns);
  const leftInOurs = nameLeft(standIns.filter(({ original }) => !/^\p{N}+$/u.test(original)));
  const mask: Mask = {
    text,
    fileName: masker(
      standIns.map((name) => ({ ...name, isExact: name.original.length < 3 && name.isExact })),
    ),
    phrasebook: (said) => text(withWordsMasked(said, words, maker)),
    log: (source) => changedLog(source, encodingOf(source), text),
    leftIn: left,
    search: (isOurs) => searchNames(isOurs ? leftInOurs : left),
    key: keyOf(standIns),
  };
  return { mask, usable };
}

function keyOf(standIns: readonly StandIn[]): string {
  const names = standIns.map(({ kind, original, standIn }) => ({ kind, original, standIn }));
  return `${JSON.stringify({ schema: 'steadypair/key/1', names }, null, 1)}\n`;
}

/** The case without files that are no text, which are named among its failures instead; and the encoding of each of the others. */
async function textsAlone(
  one: BundleCase,
  { analysed }: Answer,
  place: string,
): Promise<{ readonly usable: BundleCase; readonly encodings: ReadonlyMap<string, string> }> {
  const encodings = new Map(analysed.files.map(({ input }) => [input.file, input.encoding]));
  const failures = new Map(analysed.failures.map((failure) => [failure.where.replace(/:\d+$/, ''), failure]));
  const binary = new Map<FileSource, InputError>();
  for (const source of one.sources) {
    if (encodings.has(source.name)) continue;
    const failure = failures.get(source.name);
    if (failure === undefined)
      throw new InputError(
        place,
        `what could not be masked: ${source.name} is a stored timeline. Nothing was written.`,
        'Give the logs that it was made from.',
      );
    const head = await readHead(source).catch(asFailure);
    const found = head instanceof InputError ? null : detectEncoding(head);
    if (found === null) binary.set(source, failure);
    else encodings.set(source.name, found.label);
  }
  const usable = {
    ...one,
    sources: one.sources.filter((source) => !binary.has(source)),
    failures: [...one.failures, ...binary.values()],
  };
  return { usable, encodings };
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}

type EncodingOf = (source: FileSource) => string;

/** Hands on every text of a case: its logs, phrasebook and job, and the names of its files. */
async function eachText(
  { sources, failures, phrasebook, job }: BundleCase,
  encodingOf: EncodingOf,
  take: (text: string) => void,
): Promise<void> {
  for (const text of [phrasebook?.text, job?.text]) if (text !== undefined) take(text);
  for (const { where, what, fix } of failures) take(`${where} ${what} ${fix}`);
  for (const source of sources) {
    take(source.name);
    await eachPiece(source, encodingOf(source), take);
  }
}

/** Every name of a case once, in a fixed order: pairs first, since units have their words. */
async function allNames(
  one: BundleCase,
  { analysed }: Answer,
  encodingOf: EncodingOf,
  ordinary: ReadonlySet<string>,
): Promise<readonly Name[]> {
  const { phrasebook, job, settings } = one;
  const rules = readPhrasebook(phrasebook?.file ?? 'built-in phrasebook', phrasebook?.text ?? null);
  const known = {
    analysed,
    job: job === null ? null : readJob(job.file, job.text),
    phrasebookName: rules.own.name ?? null,
    settings,
  };
  const releases = analysed.timelines.flatMap(({ events }) =>
    events.flatMap(({ signal, value }) =>
      (signal === 'firmware' || signal === 'model') && value !== null ? [value] : [],
    ),
  );
  const all = new Map<string, Name>();
  const add = (name: Name): void => {
    const key = name.isExact ? name.original : name.original.toLowerCase();
    if (!all.has(key)) all.set(key, name);
  };
  for (const name of namesOfCase(known, ordinary)) add(name);
  const firmware = new Set(releases);
  const found = new Map<string, Name>();
  await eachText(one, encodingOf, (text) => {
    for (const name of namesInText(text, firmware)) found.set(name.original.toLowerCase(), name);
  });
  for (const [, name] of [...found].sort(([a], [b]) => compareText(a, b)))
    add({ ...name, isExact: ordinary.has(name.original.toLowerCase()) });
  return [...all.values()];
}

/** How often stand-ins are made again that occur in the logs. */
const mostTries = 20;

/** Stand-ins that occur nowhere. Throws InputError where a name is too short for that. */
async function distinct(
  names: readonly Name[],
  one: BundleCase,
  encodingOf: EncodingOf,
  { ordinary, place }: { readonly ordinary: ReadonlySet<string>; readonly place: string },
): Promise<{ readonly standIns: readonly StandIn[]; readonly maker: ReturnType<typeof standInMaker> }> {
  const maker = standInMaker();
  const isKept = (word: string): boolean => word.length < 2 || ordinary.has(word.toLowerCase());
  const made = new Map<Name, StandIn>();
  let clashing: readonly StandIn[] = [];
  for (let tries = 0; tries < mostTries; tries += 1) {
    for (const name of names) {
      const standIn = made.get(name)?.standIn ?? standInFor(name, maker, isKept);
      made.set(name, { ...name, standIn });
    }
    const standIns = [...made.values()];
    const seen = new Set<string>();
    const find = nameFinder(standIns.map((s) => ({ ...s, original: s.standIn, isExact: false, of: s })));
    await eachText(one, encodingOf, (text) => {
      for (const { name } of find(text)) seen.add(name.standIn);
    });
    clashing = standIns.filter(
      ({ original, standIn }) => seen.has(standIn) || standIn.toLowerCase() === original.toLowerCase(),
    );
    if (clashing.length === 0) return { standIns, maker };
    for (const { standIn, original } of clashing) {
      maker.forget(original);
      for (const [name, known] of made)
        if (known.standIn === standIn || sharesWord(name.original, original)) made.delete(name);
    }
  }
  const [first] = clashing;
  throw new InputError(
    place,
    `what could not be masked: "${first?.original ?? ''}" is too short for a name of its own in its place. Nothing was written.`,
    'Make the bundle without a mask, or give fewer logs.',
  );
}

function sharesWord(one: string, other: string): boolean {
  const words = new Set([...one.matchAll(/\p{L}+/gu)].map(([word]) => word.toLowerCase()));
  return [...other.matchAll(/\p{L}+/gu)].some(([word]) => words.has(word.toLowerCase()));
}
