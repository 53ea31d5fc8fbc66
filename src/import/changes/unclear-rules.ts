import { detached } from '../bytes/decode.ts';
import type { Row } from '../bytes/row.ts';
import type { Unclear } from '../phrasebook/meanings.ts';

/** A rule for messages that says nothing of the rows it fits, since it lacks something, and how many rows those are. */
export interface UnclearRule extends Unclear {
  readonly message: string;
  readonly line: number;
  readonly row: string;
  count: number;
}

/** So many rules that lack something are told apart. */
const mostRules = 100;

/** Counts a row that a rule fits without saying anything of it. */
export function noteUnclear(
  unclear: Map<string, UnclearRule>,
  row: Row,
  found: Unclear,
  message: string,
): void {
  // Plain English has no place to name: the message itself is.
  const key = `${found.lacks}\n${found.place ?? message}`;
  const known = unclear.get(key);
  if (known !== undefined) known.count += 1;
  else if (unclear.size < mostRules)
    unclear.set(detached(key), {
      ...found,
      message: detached(message),
      line: row.line,
      row: row.ownText(),
      count: 1,
    });
}
