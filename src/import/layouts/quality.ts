import type { Head } from './head.ts';

/** Names of columns that say how good the value beside them is. Common practice, no source. */
const qualityName = /(?:^|[\s._/:|-])(?:quality|qual|qc|q)$/i;
/** Common practice, no source. */
const bad = /^(?:bad|uncertain|invalid|not good|stale|questionable|suspect|no data)\b/i;
const good = /^(?:good|ok|valid)\b/i;
/** Qualities of a value that was observed: from 192 on the numbers of OPC are good, below it bad or uncertain. Common practice, no source. */
const goodWords: readonly string[] = ['good', 'ok', 'valid', '192', '216', '0xc0'];
const badNumbers: ReadonlySet<string> = new Set(
  [0, 4, 8, 12, 16, 20, 24, 28, 64, 68, 80, 84, 88].map((number) => String(number)),
);

/** Whether a column is named as one of qualities. */
export function isQualityName(name: string): boolean {
  return qualityName.test(name.trim());
}

/** Whether a cell is a quality: a word of it, or its number. */
export function isQuality(cell: string): boolean {
  return good.test(cell) || isUsuallyGood(cell) || isBad(cell);
}

/** True for a quality that says the value was observed: the site's own words, else the usual ones; without case. */
export function qualityReader(own: readonly string[] | undefined): (text: string) => boolean {
  const words = new Set((own ?? goodWords).map((word) => word.trim().toLowerCase()));
  return (text) => words.has(text.trim().toLowerCase());
}

const isUsuallyGood = qualityReader(undefined);

/** Whether a quality says that the value beside it was not read. */
export function isBad(cell: string): boolean {
  const text = cell.trim();
  return bad.test(text) || badNumbers.has(text);
}

/** The only column of qualities of a table; -1 where it has none, or several, of which each is of a value of its own. */
export function qualityColumn({ names }: Pick<Head, 'names'>): number {
  const found = names.flatMap((name, index) => (isQualityName(name) ? [index] : []));
  return found.length === 1 ? (found[0] ?? -1) : -1;
}
