import { detached } from '../bytes/decode.ts';
import type { Row } from '../bytes/row.ts';

/** A quality that says a reading was not observed, and in how many rows it stands. */
export interface Quality {
  /** As the log writes it. */
  readonly text: string;
  readonly line: number;
  readonly row: string;
  count: number;
  lastLine: number;
}

/** The qualities of a file that say so. */
export type Qualities = Map<string, Quality>;

/** No row yet. */
export function noQualities(): Qualities {
  return new Map();
}

/** No system has as many qualities: the rest are counted as one. */
const mostQualities = 100;

/** The quality of a row, which is not counted yet. */
export function qualityIn(known: Qualities, said: string, row: Row): Quality {
  const text = said.trim();
  const key = known.has(text) || known.size < mostQualities ? text : '(further qualities)';
  const found = known.get(key);
  if (found !== undefined) return found;
  const made = { text: detached(key), line: row.line, row: row.ownText(), count: 0, lastLine: 0 };
  known.set(made.text, made);
  return made;
}
