import type { Row } from '../bytes/row.ts';
import type { Sink } from '../changes/sink.ts';
import type { TalliedRow, WordingTally } from './tally-wordings.ts';

/** How many units are told apart. */
export const mostUnits = 1000;

/** A sink that counts what importers say of each row, and keeps nothing else; `units` are the names of units so far. */
export function tallySink(
  tally: WordingTally,
  units: Set<string>,
  counts: { taken: number; rejected: number },
): (row: Row) => Sink {
  let row: TalliedRow;
  const unit = (name: string): void => {
    counts.taken += 1;
    row = { ...row, unit: name };
    if (name === '') return;
    if (units.size < mostUnits) units.add(name);
    tally.unit(name, row);
  };
  const sink: Sink = {
    reading(_at, name, parameter, value) {
      unit(name);
      tally.reading(parameter, value, row);
    },
    entry(_at, name, message) {
      unit(name);
      tally.message(message, row);
    },
    note(_at, pair, _half, text) {
      unit(pair);
      tally.note(text, row);
    },
    reject() {
      counts.rejected += 1;
    },
    unread: () => undefined,
    ignore: () => undefined,
  };
  return (next) => {
    row = { line: next.line, unit: '', text: () => next.text() };
    return sink;
  };
}
