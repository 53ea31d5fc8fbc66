/** The columns a table may have: the key in a phrasebook, and its spellings in plain English, folded as names are compared. */
const columns = [
  ['time', ['time', 'timestamp', 'date time', 'date/time', 'date and time', 'when', 'stamp']],
  ['date', ['date', 'day']],
  ['clock', ['clock', 'time of day']],
  ['unit', ['unit', 'node', 'module', 'device', 'source', 'controller', 'station']],
  ['pair', ['pair']],
  ['half', ['half', 'slot', 'place']],
  ['role', ['role']],
  ['parameter', ['parameter', 'item', 'quantity', 'point']],
  ['value', ['value', 'reading', 'state']],
  ['state', ['alarm state', 'condition state', 'event state']],
  [
    'ended',
    [
      'cleared',
      'cleared at',
      'cleared time',
      'clear time',
      'time cleared',
      'ended',
      'ended at',
      'end time',
      'rtn',
      'rtn time',
      'returned to normal',
      'return to normal',
      'off time',
    ],
  ],
  ['quality', ['quality']],
  ['message', ['message', 'text', 'event', 'description', 'entry']],
  ['severity', ['severity', 'priority', 'level']],
  ['class', ['class', 'category', 'type']],
] as const;

export type ColumnKey = (typeof columns)[number][0];

/** All keys, in the order in which people are asked for them. */
export const columnKeys: readonly ColumnKey[] = columns.map(([key]) => key);

const spellings: ReadonlyMap<ColumnKey, readonly string[]> = new Map<ColumnKey, readonly string[]>(columns);

/** How plain English spells the name of a column, without case, spaces, `-` and `_`. */
export function columnSpellings(key: ColumnKey): readonly string[] {
  return spellings.get(key) ?? [];
}
