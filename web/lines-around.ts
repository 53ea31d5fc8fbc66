import { eachChunk, type FileSource, InputError } from '../src/pipeline.ts';
import type { SourceLine } from '../src/vocabulary.ts';
import type { Bytes } from './browser-files.ts';
import { countEnds, type LineIndex, pieceBefore, pieceBytes } from './line-index.ts';
import { lineTaker } from './line-taker.ts';
import type { LinesAround } from './protocol.ts';

const longestShown = 600;
/** Of a row that goes over more lines than these the first are compared and shown. */
const mostLines = 40;

/** The lines of one file, read back. */
export interface FileLines {
  /**
   * The cited lines with up to `reach` lines before and after each, in the order asked for. What is asked for first is read
   * first: a file has one queue, so that two readings never move one index.
   */
  around(cited: readonly SourceLine[], reach: number): Promise<readonly LinesAround[]>;
}

/** Reads lines by their numbers; a line that the file has not is left out. */
type ReadLines = (wanted: readonly ReadonlySet<number>[]) => Promise<ReadonlyMap<number, string>>;

/** The lines of a file that can be read from any place on; `index` is what was counted of it so far. */
export function linesOfFile(bytes: Bytes, encoding: string, index: LineIndex): FileLines {
  return inOrder(async (wanted) => {
    const found = new Map<number, string>();
    for (const lines of wanted)
      for (const [line, text] of await readFrom(bytes, encoding, index, lines)) found.set(line, text);
    return found;
  });
}

/** The lines of a member of an archive: it is unpacked from its begin, once for all that are asked for together. */
export function linesOfMember(member: FileSource, encoding: string): FileLines {
  return inOrder(async (wanted) => {
    const decoder = new TextDecoder(encoding);
    const taker = lineTaker(1, new Set(wanted.flatMap((lines) => [...lines])));
    await eachChunk(member, (chunk) => taker.take(decoder.decode(chunk, { stream: true })));
    return taker.found();
  });
}

/** The cited line as it was kept, where there is no file to read it from. */
export function asKept(at: SourceLine, state: LinesAround['state']): LinesAround {
  const lines = linesOf(at.text).map(shown);
  return { first: at.line, last: at.line + lines.length - 1, lines, state };
}

function inOrder(read: ReadLines): FileLines {
  let before: Promise<unknown> = Promise.resolve();
  return {
    around(cited, reach) {
      const own = before.then(() => readAll(read, cited, reach));
      // Who asked for these lines is told what went wrong; who asks next is not.
      before = own.catch(() => undefined);
      return own;
    },
  };
}

async function readAll(
  read: ReadLines,
  cited: readonly SourceLine[],
  reach: number,
): Promise<readonly LinesAround[]> {
  try {
    const found = await read(cited.map((at) => linesWanted(at, reach)));
    return cited.map((at) => compared(at, linesWanted(at, reach), found));
  } catch (error) {
    if (error instanceof InputError) return cited.map((at) => asKept(at, 'unreadable'));
    throw error;
  }
}

function linesWanted({ line, text }: SourceLine, reach: number): ReadonlySet<number> {
  const first = Math.max(1, line - reach);
  const last = line + linesOf(text).length - 1 + reach;
  return new Set(Array.from({ length: last - first + 1 }, (_, at) => first + at));
}

/** What the file says, if it still says what was kept: else that is shown. */
function compared(
  at: SourceLine,
  wanted: ReadonlySet<number>,
  found: ReadonlyMap<number, string>,
): LinesAround {
  const own = linesOf(at.text);
  const row = own.map((_, index) => found.get(at.line + index) ?? '').join('\n');
  // The import keeps a row as it is, but for the zeros before it and the end of an endless one.
  if (!row.includes(own.join('\n'))) return asKept(at, 'differs');
  const lines = [...wanted].sort((a, b) => a - b).flatMap((line) => found.get(line) ?? []);
  const first = Math.max(1, Math.min(...wanted));
  return { first, last: at.line + own.length - 1, lines: lines.map(shown), state: 'same' };
}

async function readFrom(
  bytes: Bytes,
  encoding: string,
  index: LineIndex,
  wanted: ReadonlySet<number>,
): Promise<ReadonlyMap<number, string>> {
  await countUntil(bytes, encoding, index, Math.min(...wanted));
  const { piece, line } = pieceBefore(index, Math.min(...wanted));
  // A byte order mark is one where the file begins, and nowhere else.
  const decoder = new TextDecoder(encoding, { ignoreBOM: piece > 0 });
  const taker = lineTaker(line, wanted);
  for (let from = piece * pieceBytes; from < bytes.size; from += pieceBytes) {
    const read = await bytes.slice(from, Math.min(bytes.size, from + pieceBytes));
    if (!taker.take(decoder.decode(read, { stream: true }))) break;
  }
  return taker.found();
}

/** Counts the line ends of piece after piece until `line` lies behind. */
async function countUntil(bytes: Bytes, encoding: string, index: LineIndex, line: number): Promise<void> {
  while ((index.at(-1) ?? 0) < line) {
    const from = (index.length - 1) * pieceBytes;
    if (from + pieceBytes >= bytes.size) return;
    const text = new TextDecoder(encoding).decode(await bytes.slice(from, from + pieceBytes));
    index.push((index.at(-1) ?? 0) + countEnds(text));
  }
}

function linesOf(text: string): readonly string[] {
  return text.replaceAll('\r\n', '\n').split('\n').slice(0, mostLines);
}

function shown(line: string): string {
  return line.length > longestShown ? `${line.slice(0, longestShown)}…` : line;
}
