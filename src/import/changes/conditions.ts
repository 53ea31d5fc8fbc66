import { detached } from '../bytes/decode.ts';
import type { Row } from '../bytes/row.ts';
import type { FileRule } from '../phrasebook/phrasebook-rules.ts';
import { type Stands, stateReader } from '../phrasebook/row-states.ts';

/** A state that the conditions of a file have, and how many rows have it. */
export interface Condition {
  /** As the log writes it. */
  readonly text: string;
  /** Whether the condition stands; `null` for a state that says neither, undefined for one that is not listed. */
  readonly stands: Stands | undefined;
  readonly line: number;
  readonly row: string;
  count: number;
}

/** The states of a file, as the rule for it reads them. */
export interface Conditions {
  readonly known: Map<string, Condition>;
  readonly read: (text: string) => Stands | undefined;
  /** The rule for the file lists them itself. */
  readonly isListed: boolean;
  readonly place: string;
}

/** No row yet. */
export function conditionsOf(rule: FileRule | undefined): Conditions {
  return {
    known: new Map(),
    read: stateReader(rule?.states),
    isListed: rule?.states !== undefined,
    place: rule?.place ?? 'files',
  };
}

/** No list has as many states: the rest are counted as one. */
const mostStates = 100;

const furtherStates = '(further states)';

/** The state of a row, which is not counted yet. */
export function conditionIn({ known, read }: Conditions, said: string, row: Row): Condition {
  const text = said.trim();
  const found = known.get(text);
  if (found !== undefined) return found;
  const stands = read(text);
  const key = stands === undefined && known.size >= mostStates ? furtherStates : detached(text);
  const listed = known.get(key) ?? { text: key, stands, line: row.line, row: row.ownText(), count: 0 };
  known.set(key, listed);
  return listed;
}
