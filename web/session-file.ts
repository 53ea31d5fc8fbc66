import type { Imported } from '../src/pipeline.ts';
import { InputError, readJob, readPhrasebook } from '../src/pipeline.ts';
import { iso } from '../src/report/json.ts';
import { timelineParquet } from '../src/report/timeline-parquet.ts';
import type { Input, Job } from '../src/vocabulary.ts';
import type { NamedText } from './protocol.ts';

/** What of an input a stored timeline does not keep: the archive that it was in. */
type KeptInput = Pick<Input, 'file' | 'sha256' | 'bytes' | 'container'>;

/** Everything the page holds, without the files themselves. */
export interface SavedSession {
  /** When it was saved, ISO 8601 UTC. */
  readonly saved: string;
  /** The version of the page that saved it. */
  readonly version: string;
  /** What the page showed: the hash of its address. */
  readonly page: string;
  readonly isAligned: boolean;
  readonly phrasebook: NamedText | null;
  readonly jobs: Readonly<Record<string, Job>>;
  readonly inputs: readonly KeptInput[];
  /** Names of what was given and was written by this program itself. */
  readonly reports: readonly string[];
  /** A stored timeline: what every file says, as Parquet. */
  readonly timelines: Uint8Array;
}

/** What is saved of a reading. */
export interface ToSave extends Omit<SavedSession, 'saved' | 'inputs' | 'timelines'> {
  readonly imported: Imported;
  /** Milliseconds UTC. */
  readonly saved: number;
}

/** SHA-256 in lower-case hexadecimal. */
export type Digest = (bytes: Uint8Array) => string;

const schema = 'steadypair/session/1';
const beginning = '{"schema":"steadypair/session/';
const seal = ',"sha256":"';

/** So many bytes tell a session from any other file. */
export const sessionBytes = beginning.length;

/** True for the first bytes of a session, of any version. */
export function isSession(head: Uint8Array): boolean {
  return new TextDecoder().decode(head.subarray(0, sessionBytes)) === beginning;
}

/** The text of a session's file. Equal readings saved at one instant give equal text. */
export function sessionText({ imported, saved, ...rest }: ToSave, digest: Digest): string {
  const { files, failures, phrasebookNotices = [] } = imported;
  const document = {
    schema,
    saved: iso(saved),
    ...rest,
    inputs: files.map(({ input }) => keptOf(input)),
    timelines: toBase64(timelineParquet(files, failures, digest, phrasebookNotices)),
  };
  const text = JSON.stringify(document);
  return `${text.slice(0, -1)}${seal}${digest(new TextEncoder().encode(text))}"}`;
}

function keptOf({ file, sha256, bytes, container }: Input): KeptInput {
  return { file, sha256, bytes, ...(container === undefined ? {} : { container }) };
}

/** Reads a session back. Throws InputError if it is damaged, or of a version that this page does not know. */
export function readSession(name: string, text: string, digest: Digest): SavedSession {
  const found = parsed(name, text);
  const said = textOf(found.schema);
  if (said !== schema)
    throw new InputError(
      name,
      `it is a session of another version (${said ?? 'none is named'}; this page reads ${schema}).`,
      'Open it with the version that saved it, or drop the log files themselves.',
    );
  const end = text.lastIndexOf(seal);
  const sealed = new TextEncoder().encode(`${text.slice(0, end)}}`);
  if (end < 0 || digest(sealed) !== textOf(found.sha256)) throw damaged(name);
  const { saved, version, page, timelines } = found;
  const phrasebook = phrasebookIn(name, found.phrasebook);
  return {
    saved: textIn(name, saved),
    version: textIn(name, version),
    page: textIn(name, page),
    isAligned: found.isAligned === true,
    phrasebook,
    jobs: jobsIn(name, found.jobs),
    inputs: listIn(name, found.inputs).map((input) => inputIn(name, input)),
    reports: listIn(name, found.reports).map((report) => textIn(name, report)),
    timelines: fromBase64(name, textIn(name, timelines)),
  };
}

type Keyed = Readonly<Record<string, unknown>>;

function isKeyed(value: unknown): value is Keyed {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function keyedIn(name: string, value: unknown): Keyed {
  if (!isKeyed(value)) throw damaged(name);
  return value;
}

function parsed(name: string, text: string): Keyed {
  try {
    return keyedIn(name, JSON.parse(text));
  } catch (error) {
    if (error instanceof SyntaxError) throw damaged(name);
    throw error;
  }
}

function damaged(name: string): InputError {
  return new InputError(
    name,
    'this session file is damaged or cut off.',
    'Copy it again, or drop the log files themselves.',
  );
}

function textOf(value: unknown): string | null {
  return typeof value === 'string' ? value : null;
}

function textIn(name: string, value: unknown): string {
  if (typeof value !== 'string') throw damaged(name);
  return value;
}

function listIn(name: string, value: unknown): readonly unknown[] {
  if (!Array.isArray(value)) throw damaged(name);
  return value;
}

function phrasebookIn(name: string, value: unknown): NamedText | null {
  if (value === null) return null;
  const { file, text } = keyedIn(name, value);
  const phrasebook = { file: textIn(name, file), text: textIn(name, text) };
  readPhrasebook(phrasebook.file, phrasebook.text);
  return phrasebook;
}

function jobsIn(name: string, value: unknown): Readonly<Record<string, Job>> {
  return Object.fromEntries(
    Object.entries(keyedIn(name, value)).map(([pair, one]) => {
      const { file, ...said } = keyedIn(name, one);
      const { file: _session, ...job } = readJob(name, JSON.stringify(said));
      return [pair, file === undefined ? job : { ...job, file: textIn(name, file) }];
    }),
  );
}

function inputIn(name: string, value: unknown): KeptInput {
  const { file, sha256, bytes, container } = keyedIn(name, value);
  if (typeof bytes !== 'number') throw damaged(name);
  const own = { file: textIn(name, file), sha256: textIn(name, sha256), bytes };
  if (container === undefined) return own;
  const held = keyedIn(name, container);
  return { ...own, container: { file: textIn(name, held.file), sha256: textIn(name, held.sha256) } };
}

/** A call takes so many arguments on every browser. */
const mostArguments = 16_384;

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += mostArguments)
    text += String.fromCharCode(...bytes.subarray(at, at + mostArguments));
  return btoa(text);
}

function fromBase64(name: string, text: string): Uint8Array {
  try {
    return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
  } catch (error) {
    if (error instanceof DOMException) throw damaged(name);
    throw error;
  }
}
