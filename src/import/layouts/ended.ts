import type { Row } from '../bytes/row.ts';
import type { Beside } from '../changes/sink.ts';
import type { TimeReader } from '../clock/time-reader.ts';
import { conditionState } from '../phrasebook/state-words.ts';
import type { Head } from './head.ts';
import { stateColumn } from './rule-columns.ts';

/** What stands where a condition has not ended yet. Common practice, no source. */
const notYet = /^(?:[-–—.]*|n\/?a|active|open|standing)$/i;

/**
 * Reads until when the condition of a row stood, where a column says it. What stands there and is no instant after that of the row, or may be
 * either of two, is said against the message, and so is that it ended at no instant: nothing of such a row is known.
 */
export function endReader(
  head: Head,
  times: TimeReader,
): (row: Row, at: number) => Pick<Beside, 'ended' | 'against'> {
  const column = head.column('ended');
  if (column < 0) return () => ({});
  const state = stateColumn(head);
  const against = (place: number, text: string): Pick<Beside, 'against'> => ({
    against: { says: 'undoes', text: `${head.names[place] ?? ''}=${text.trim()}` },
  });
  let own: TimeReader | undefined;
  return (row, at) => {
    const text = row.cell(column).trim();
    const said = state < 0 ? '' : row.cell(state);
    if (notYet.test(text)) return conditionState(said) === 'off' ? against(state, said) : {};
    own ??= times.another();
    const before = own.folds();
    const ended = own.read(text);
    const isOne = own.folds().repeated === before.repeated;
    if (typeof ended === 'number' && ended >= at && isOne) return { ended };
    return against(column, text);
  };
}
