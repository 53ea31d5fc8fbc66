import type { UnknownWording } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { isIgnored } from '../phrasebook/phrasebook-rules.ts';
import { ends, loseCell, mark, type SinkState, type Wording } from './sink-state.ts';
import type { Unit } from './units.ts';
import { keepWordingRow } from './wording-rows.ts';

/** Wording as it is found: what it is listed as, what it names, and the value it came with. */
export interface Found extends Pick<UnknownWording, 'wording' | 'kind' | 'name'> {
  readonly value?: string;
  /** It is known that the site does not ignore it. */
  readonly isHeeded?: boolean;
}

const mostWordings = 1000;
const mostValues = 8;

/**
 * Counts wording that is not known, once for a row; the number of different ones is bounded. New wording at the end of a
 * row that is cut off is no wording.
 */
export function unmatched(
  state: SinkState,
  unit: Unit,
  at: number,
  { wording, kind, name, value, isHeeded = false }: Found,
): void {
  const { wordings, row } = state;
  state.isRepeatable = false;
  if (!isHeeded && isMeaningless(state, wording)) {
    mark(state, ends.ignored);
    return;
  }
  const own = wordings.get(wording);
  if (row.isCut && own === undefined) {
    loseCell(state);
    return;
  }
  const isHabit = unit.kind === 'reading' && kind !== 'value';
  const { unknown } = state;
  if (!isHabit || state.end < ends.unmatched) unknown.share = isHabit ? 'habit' : 'other';
  unknown.unit = unit;
  unknown.at = at;
  mark(state, ends.unmatched);
  const isListed = own !== undefined || wordings.size < mostWordings;
  const listed = isListed ? wording : '(further wordings)';
  const known = own ?? wordings.get(listed) ?? newWording(kind, isListed ? name : listed, row.line);
  if (known.count === 0) {
    wordings.set(detached(listed), known);
    keepWordingRow(state.wordingRows, row);
  }
  if (known.lastLine !== row.line) known.count += 1;
  known.lastLine = row.line;
  if (value !== undefined && known.values.size < mostValues) known.values.add(detached(value));
}

function newWording(kind: Wording['kind'], name: string, firstLine: number): Wording {
  return { kind, name: detached(name), values: new Set(), count: 0, firstLine, lastLine: 0 };
}

/** Wording as it is listed ("light = n/a", "unit P7") that the site says to ignore. */
function isMeaningless({ phrasebook, meaningless, used }: SinkState, wording: string): boolean {
  if (phrasebook.ignore.count === 0) return false;
  const known = meaningless.get(wording);
  if (known !== undefined) return known;
  const found = isIgnored(phrasebook, wording, used);
  if (meaningless.size < mostWordings) meaningless.set(detached(wording), found);
  return found;
}
