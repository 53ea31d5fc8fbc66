import type { ImportedFile } from '../vocabulary.ts';
import { join } from './bytes/bytes.ts';
import { type Encoding, windows1252 } from './bytes/decode.ts';
import type { FileSource, GrowingFile, Hasher } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import { lastLineEnd } from './bytes/line-ends.ts';
import { checkMemoryBudget } from './changes/memory-budget.ts';
import { assemble } from './describe-file.ts';
import { type FedWay, fedWay, type ReadSoFar } from './fed-way.ts';
import type { ImportOptions } from './import-options.ts';
import { encodingOf, readFile, type Way, wayOf } from './read-file.ts';

/** A file that is read as it grows. */
export interface FedFile {
  /** How many bytes were taken so far, those of a half-written last line among them. */
  bytes(): number;
  /**
   * Takes what is new of the file. What cannot be read now is left for the next time. Throws InputError where nothing could be
   * read at all, and where there are too many changes.
   */
  feed(options: ImportOptions): Promise<void>;
  /**
   * What the whole lines so far come to: what `readFile` gives of them. Once nothing follows, a last line counts as it stands;
   * then it is asked for the last time. Throws InputError as `readFile` does.
   */
  soFar(): Promise<ImportedFile>;
}

interface State {
  readonly source: GrowingFile;
  /** The file under the name that its rules are chosen by. */
  readonly named: FileSource;
  readonly options: ImportOptions;
  readonly head: Uint8Array;
  readonly encoding: Encoding;
  readonly hasher: Hasher;
  readonly main: FedWay;
  readonly mainWay: Way;
  /** The same file as Windows-1252, where all that is not ASCII in it is no UTF-8. */
  other: { readonly way: Way; readonly fed: FedWay } | null;
  /** Up to there all was taken; what follows is the start of a line. */
  taken: number;
  carry: Uint8Array;
}

/** What is longer is no line of a log: it is taken as it comes. */
const longestLine = 1_048_576;
/** From so many bytes on the hash is worth a thread of its own for as long as the file is followed. Chosen here. */
const threadFrom = 268_435_456;
/** Up to so many bytes a file is read whole while an open quote keeps lines back. Chosen here. */
const soonRead = 16_777_216;

/**
 * Begins to read a file that may grow, which begins with `head`. Nothing of it is taken yet. `null` where the platform's
 * hasher cannot tell a digest so far. Throws InputError where no layout fits.
 */
export async function openFed(
  source: GrowingFile,
  options: ImportOptions,
  head: Uint8Array,
): Promise<FedFile | null> {
  const { readAs: name, bytes } = source;
  const named: FileSource = { name, bytes, open: () => source.openFrom(0) };
  const hasher = options.sha256({ name, bytes: bytes >= threadFrom ? bytes : 0 });
  if (hasher.digestSoFar === undefined) return null;
  const encoding = encodingOf(named, head);
  const mainWay = wayOf(named, options, head, encoding);
  const main = fedWay(name, mainWay, await scanned(mainWay, source, bytes));
  const state: State = {
    source,
    named,
    options,
    head,
    encoding,
    hasher,
    main,
    mainWay,
    other: null,
    taken: 0,
    carry: new Uint8Array(0),
  };
  return {
    bytes: () => state.taken + state.carry.length,
    feed: (call) => feed(state, call),
    soFar: () => soFar(state),
  };
}

/** Looks for the order of day and month; gives up to where. */
async function scanned({ scan }: Way, source: GrowingFile, to: number): Promise<number> {
  let at = 0;
  if (scan.isOpen())
    await eachUpTo(source, to, (chunk) => {
      scan.push(chunk);
      at += chunk.length;
      return scan.isOpen();
    });
  return at;
}

/** Hands on the bytes of a file up to a place, or until `take` gives `false`. */
async function eachUpTo(
  source: GrowingFile,
  to: number,
  take: (chunk: Uint8Array) => unknown,
): Promise<void> {
  let at = 0;
  for await (const chunk of source.openFrom(0)) {
    if (take(chunk.subarray(0, to - at)) === false) return;
    at += chunk.length;
    if (at >= to) return;
  }
}

async function feed(state: State, call: ImportOptions): Promise<void> {
  let isTaking = false;
  let hashing: Promise<void> = Promise.resolve();
  try {
    for await (const chunk of state.source.openFrom(state.taken + state.carry.length)) {
      isTaking = true;
      const before = hashing;
      hashing = takeChunk(state, chunk);
      hashing.catch(() => undefined);
      checkMemoryBudget(state.named.name, state.main.taken(), call);
      call.onProgress?.(state.taken, state.main.rows());
      await before;
      isTaking = false;
    }
  } catch (error) {
    // A share that is away for a moment: what was read of the file stays.
    if (isTaking || !(error instanceof InputError) || state.taken === 0) throw error;
  } finally {
    await hashing;
  }
}

/** Takes the whole lines of a chunk, after what the chunk before left of one; settles once they are hashed. */
function takeChunk(state: State, chunk: Uint8Array): Promise<void> {
  const { carry, encoding, taken } = state;
  const isWide = encoding.label.startsWith('utf-16');
  // Of a character of two bytes one may stand in the chunk before.
  const bytes = isWide ? join(carry, chunk) : chunk;
  const before = isWide ? 0 : carry.length;
  const end = lastLineEnd(bytes, taken + before, encoding.label);
  if (end === 0) {
    state.carry = isWide ? bytes : join(carry, chunk);
    return state.carry.length > longestLine ? takeCarry(state) : Promise.resolve();
  }
  const first = isWide || carry.length === 0 ? Promise.resolve() : takeCarry(state);
  state.carry = bytes.slice(end);
  return Promise.all([first, take(state, bytes.subarray(0, end))]).then(() => undefined);
}

function takeCarry(state: State): Promise<void> {
  const { carry } = state;
  state.carry = new Uint8Array(0);
  return take(state, carry);
}

function take(state: State, bytes: Uint8Array): Promise<void> {
  const hashed = Promise.resolve(state.hasher.update(bytes));
  state.main.push(bytes, state.taken);
  state.other?.fed.push(bytes, state.taken);
  state.taken += bytes.length;
  return hashed;
}

async function soFar(state: State): Promise<ImportedFile> {
  const { source, named, options } = state;
  const isEnded = source.life !== 'grows';
  if (isEnded && state.carry.length > 0) await takeCarry(state);
  const bytes = state.taken;
  const sha256 = (await state.hasher.digestSoFar?.()) ?? '';
  const digested = { sha256, bytes, damage: null };
  const readSoFar: ReadSoFar = source.life === 'gone' ? null : (push) => eachUpTo(source, bytes, push);
  const main = await state.main.soFar(digested, readSoFar, isEnded);
  const isForeign = main.parts.isForeign && state.encoding.isGuess === true;
  const other = isForeign && readSoFar !== null ? await foreign(state, readSoFar) : null;
  const { parts, isWaiting } = (await other?.fed.soFar(digested, readSoFar, isEnded)) ?? main;
  if (isWaiting && readSoFar !== null && bytes <= soonRead) return readFile(upTo(source, bytes), options);
  return assemble(named, options, parts, (other?.way ?? state.mainWay).rule);
}

/** The file as Windows-1252, from then on beside the other encoding. */
async function foreign(
  state: State,
  readSoFar: NonNullable<ReadSoFar>,
): Promise<NonNullable<State['other']>> {
  if (state.other !== null) return state.other;
  const way = wayOf(state.named, state.options, state.head, windows1252);
  await readSoFar((chunk) => {
    if (way.scan.isOpen()) way.scan.push(chunk);
  });
  const fed = fedWay(state.named.name, way, state.taken);
  let at = 0;
  await readSoFar((chunk) => {
    fed.push(chunk, at);
    at += chunk.length;
  });
  state.other = { way, fed };
  return state.other;
}

/** The first bytes of a file as a file. */
function upTo(source: GrowingFile, to: number): FileSource {
  return {
    name: source.readAs,
    bytes: to,
    async *open() {
      let at = 0;
      for await (const chunk of source.openFrom(0)) {
        yield chunk.subarray(0, to - at);
        at += chunk.length;
        if (at >= to) return;
      }
    },
  };
}
