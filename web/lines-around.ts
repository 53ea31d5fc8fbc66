import { eachChunk, type FileSource } from '../src/pipeline.ts';
import type { Bytes } from './browser-files.ts';
import type { LinesAround } from './protocol.ts';

const chunkBytes = 1_048_576;
const longestShown = 600;

/** How many line ends stand before each chunk of a file, as far as it was looked at; begins as `[0]`. */
export type LineIndex = number[];

/**
 * The line `line`, counted from 1, and up to `reach` lines before and after it, read back from the file. `index` grows as
 * far as the line, so that the next one is found without reading all of it again. Empty if the file has no such line.
 */
export async function linesAround(
  bytes: Bytes,
  encoding: string,
  index: LineIndex,
  line: number,
  reach: number,
): Promise<LinesAround> {
  const [first, last] = [Math.max(1, line - reach), line + reach];
  await lookUntil(bytes, encoding, index, last);
  // A chunk may begin inside a line or a character: begin where that line is before the first wanted.
  const begin = Math.max(
    0,
    index.findLastIndex((before) => before < first - 1),
  );
  let text = '';
  let chunk = begin;
  const ends = (index[begin] ?? 0) + 1;
  const needed = last - ends + 2;
  while (chunk * chunkBytes < bytes.size && text.split('\n', needed + 1).length <= needed) {
    const to = Math.min(bytes.size, (chunk + 1) * chunkBytes);
    text = new TextDecoder(encoding).decode(await bytes.slice(begin * chunkBytes, to));
    chunk += 1;
  }
  const lines = text.split('\n', needed).slice(first - ends, last - ends + 1);
  const isEnd = lines.at(-1) === '' && chunk * chunkBytes >= bytes.size;
  return { first, lines: (isEnd ? lines.slice(0, -1) : lines).map(shown) };
}

/** As `linesAround`, from a member of an archive: it is unpacked from its begin to the last line wanted. */
export async function linesUnpacked(
  member: FileSource,
  encoding: string,
  line: number,
  reach: number,
): Promise<LinesAround> {
  const [first, last] = [Math.max(1, line - reach), line + reach];
  const decoder = new TextDecoder(encoding);
  const kept: string[] = [];
  let [at, rest] = [1, ''];
  const take = (text: string): boolean => {
    const lines = (rest + text).split('\n');
    rest = lines.pop() ?? '';
    for (const found of lines) {
      if (at >= first && at <= last) kept.push(found);
      at += 1;
    }
    return at <= last;
  };
  await eachChunk(member, (chunk) => take(decoder.decode(chunk, { stream: true })));
  if (at <= last && rest !== '') take('\n');
  return { first, lines: kept.map(shown) };
}

/** Counts the line ends of chunk after chunk until `line` lies behind. */
async function lookUntil(bytes: Bytes, encoding: string, index: LineIndex, line: number): Promise<void> {
  for (let known = index.at(-1) ?? 0; known < line; known = index.at(-1) ?? 0) {
    const from = (index.length - 1) * chunkBytes;
    if (from + chunkBytes >= bytes.size) return;
    const text = new TextDecoder(encoding).decode(await bytes.slice(from, from + chunkBytes));
    index.push(known + countEnds(text));
  }
}

function countEnds(text: string): number {
  let count = 0;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

function shown(line: string): string {
  const whole = line.endsWith('\r') ? line.slice(0, -1) : line;
  return whole.length > longestShown ? `${whole.slice(0, longestShown)}…` : whole;
}
