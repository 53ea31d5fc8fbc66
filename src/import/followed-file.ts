import type { ImportedFile } from '../vocabulary.ts';
import { detectEncoding } from './bytes/decode.ts';
import type { FileSource, GrowingFile } from './bytes/file-source.ts';
import { InputError } from './bytes/input-error.ts';
import { lastLineEnd } from './bytes/line-ends.ts';
import { headBytes, readHead } from './bytes/read-head.ts';
import type { DateOrder } from './clock/stamp.ts';
import { type FedFile, openFed } from './fed-file.ts';
import type { ImportOptions } from './import-options.ts';
import { saidBesides } from './kept-readings.ts';
import { type Listening, listening } from './phrasebook/listening.ts';
import { type Read, readSource } from './read-source.ts';
import { isStoredTimeline } from './stored/stored-timeline.ts';

/** One reading of a file that may grow, by what was said besides. */
export interface Followed {
  readonly said: string;
  readonly asked: Listening;
  readonly options: ImportOptions;
  readonly used: Set<string>;
  readonly orders: (readonly [string, DateOrder])[];
  /** `null` where the file is read whole whenever it grew. */
  fed: FedFile | null;
  hasGrown: boolean;
  /** What it gave last, of so many bytes; `null` where it was not read, or another time may give more of the same bytes. */
  read: Read | InputError | null;
  bytes: number;
  life: GrowingFile['life'];
  /** All of a small file whose last line is half written, for when its bytes are gone. */
  rest: Uint8Array | null;
}

/** Up to so many bytes a file whose layout is not yet certain is read from memory. Chosen here. */
const mostInMemory = 1_048_576;

/** Nothing is read yet. */
export function newFollowed(source: GrowingFile, given: ImportOptions): Followed {
  const asked = listening(given.phrasebook, source.readAs);
  const used = new Set<string>();
  const orders: (readonly [string, DateOrder])[] = [];
  const onOrder = (file: string, order: DateOrder): void => {
    if (orders.length === 0) orders.push([file, order]);
  };
  return {
    said: saidBesides({ name: source.readAs }, given),
    asked,
    options: { ...given, phrasebook: asked.phrasebook, used, onOrder },
    used,
    orders,
    fed: null,
    hasGrown: false,
    read: null,
    bytes: 0,
    life: source.life,
    rest: null,
  };
}

/** What is new must be read by the phrasebook that the rest was read by; what is read already by one that answers alike. */
export function stands(followed: Followed, source: GrowingFile, { phrasebook }: ImportOptions): boolean {
  if (followed.asked.of === phrasebook) return true;
  return isUpToDate(followed, source) && followed.asked.answersAlike(phrasebook);
}

/** True where reading the file gives nothing else. */
export function isUpToDate({ read, fed, bytes, life }: Followed, source: GrowingFile): boolean {
  if (read === null) return false;
  if (life === 'gone') return source.life === 'gone';
  if (bytes !== source.bytes) return false;
  return life === source.life || (fed === null && endsWhole(read, bytes));
}

/** Nothing was half written at its end. */
function endsWhole(read: Read | InputError, bytes: number): boolean {
  return !(read instanceof InputError) && read.files.every(({ input }) => input.bytes === bytes);
}

function alone(file: ImportedFile): Read {
  return { files: [file], failures: [], phrasebookNotices: [], isStored: false };
}

/** Reads what is new. Throws InputError for what another time may give. */
export async function goOn(followed: Followed, source: GrowingFile, call: ImportOptions): Promise<void> {
  const { life } = source;
  if (life === 'gone' && followed.fed === null && followed.rest === null) {
    followed.life = life;
    return;
  }
  followed.hasGrown ||= followed.bytes > 0;
  if (followed.fed === null && life !== 'gone') await openAgain(followed, source);
  const { fed } = followed;
  if (fed === null) await readWhole(followed, source);
  else {
    followed.read = null;
    if (life !== 'gone') await fed.feed({ ...followed.options, ...budgetOf(call) });
    followed.bytes = fed.bytes();
    if (life !== 'grows') followed.fed = null;
    followed.read = alone(await fed.soFar());
  }
  followed.life = life;
}

function budgetOf({ mostChanges, keptChanges, onProgress }: ImportOptions): Partial<ImportOptions> {
  return {
    ...(mostChanges === undefined ? {} : { mostChanges }),
    ...(keptChanges === undefined ? {} : { keptChanges }),
    ...(onProgress === undefined ? {} : { onProgress }),
  };
}

/** Makes the file ready to be fed, where it can be. */
async function openAgain(followed: Followed, source: GrowingFile): Promise<void> {
  if (source.bytes < headBytes) return;
  const head = await readHead(source);
  if (head.length < headBytes || (await isStoredTimeline(source))) return;
  followed.fed = await openFed(source, followed.options, head);
}

/** Reads a file whole: the whole lines of one that may grow. */
async function readWhole(followed: Followed, source: GrowingFile): Promise<void> {
  const { bytes, life, readAs: name } = source;
  const isSmall = bytes <= mostInMemory;
  const content = life === 'gone' ? followed.rest : isSmall ? await source.slice(0, bytes) : null;
  const to = content === null || life !== 'grows' ? bytes : endOfLines(content);
  followed.rest = content !== null && to < content.length ? content : null;
  const given = content === null ? source : inMemory(name, content.subarray(0, to));
  followed.read = null;
  followed.read = await readSource(given, followed.options).catch(asFailure);
  followed.bytes = content?.length ?? bytes;
  if (content === null && followed.read instanceof InputError) throw followed.read;
}

/** Where the last whole line of a text ends; what is no text is taken as it is. */
function endOfLines(content: Uint8Array): number {
  const encoding = detectEncoding(content.subarray(0, headBytes));
  return encoding === null ? content.length : lastLineEnd(content, 0, encoding.label);
}

function inMemory(name: string, bytes: Uint8Array): FileSource {
  return {
    name,
    bytes: bytes.length,
    async *open() {
      yield bytes;
    },
  };
}

function asFailure(error: unknown): InputError {
  if (error instanceof InputError) return error;
  throw error;
}
