import type { Row } from '../bytes/row.ts';
import type { TimeReader } from '../clock/time-reader.ts';
import { conditionState } from '../phrasebook/state-words.ts';
import type { Head } from './head.ts';
import { stateColumn } from './rule-columns.ts';

/** What stands where a condition has not ended yet. Common practice, no source. */
const notYet = /^(?:[-–—.]*|n\/?a|no|false|active|open|standing)$/i;

/** Until when the condition of a row stood; undefined where it still does; or why that cannot be said. */
export type Ended = number | undefined | { readonly what: string; readonly fix: string };

/**
 * Reads until when the condition of a row stood, where a column says it. It must be one instant, none before that of the row; and a
 * condition that no longer stands must have one.
 */
export function endReader(head: Head, times: TimeReader): (row: Row, at: number) => Ended {
  const column = head.column('ended');
  if (column < 0) return () => undefined;
  const state = stateColumn(head);
  const name = head.names[column] ?? '';
  let own: TimeReader | undefined;
  return (row, at) => {
    const text = row.cell(column).trim();
    const said = state < 0 ? '' : row.cell(state).trim();
    if (notYet.test(text))
      return conditionState(said) === 'off'
        ? {
            what: `Its condition no longer stands ("${said}"), and column "${name}" does not say since when.`,
            fix: 'Export the list with the end of each condition.',
          }
        : undefined;
    own ??= times.another();
    const { repeated } = own.folds();
    const ended = own.read(text);
    const isOne = own.folds().repeated === repeated;
    if (typeof ended === 'number' && ended >= at && isOne) return ended;
    return {
      what: `Column "${name}" says "${text}", which is not one instant after that of the row.`,
      fix: 'Correct the row.',
    };
  };
}
