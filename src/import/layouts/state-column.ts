import { conditionState } from '../phrasebook/state-words.ts';
import { holdsMostly, type SampleColumn } from './column-content.ts';

/** Names of columns that say whether a condition stands. Common practice, no source. */
const stateName = /\b(?:state|status|zustand|estado|[ée]tat)\b/i;

/**
 * The column that says of the condition in each row whether it stands; undefined where none does. By its content it must say
 * of some that they stand and of others that they do not, or be named as one of states.
 */
export function stateColumn(columns: readonly SampleColumn[]): SampleColumn | undefined {
  return columns.find((column) => {
    if (!holdsMostly(column, (cell) => conditionState(cell) !== undefined)) return false;
    const states = new Set(column.cells.map(conditionState));
    return (
      (states.has('off') && (states.has('on') || stateName.test(column.name))) ||
      (states.has('on') && stateName.test(column.name))
    );
  });
}

/** Whether a column says who or whether somebody acknowledged: that is no state of the process. */
export function isAcknowledgement({ name }: Pick<SampleColumn, 'name'>): boolean {
  return /^(?:un)?ack(?:ed|nowledged?|nowledgement)?\b|\back(?:ed|nowledged)?(?: by)?$/i.test(name);
}
