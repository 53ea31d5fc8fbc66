import { type ClockOrder, type ClockStep, stepsOf } from './clock-order.ts';
import { detached } from './decode.ts';
import { damagedTail, isTotal, rowNotices } from './row-notices.ts';
import type { SinkResult } from './sink.ts';
import type { State } from './sink-state.ts';
import { toStream, type Unit } from './units.ts';

/** Where the clock of the file was set back, by all its parameters and units. */
export function clockStepsOf({ unitList }: State): readonly ClockStep[] {
  return stepsOf(unitList.flatMap(ordersOf));
}

function ordersOf({ order, parameters }: Unit): readonly ClockOrder[] {
  return [order, ...[...parameters.values()].flatMap((p) => (typeof p === 'string' ? [] : [p.order]))];
}

/** The streams of the units that said something, and the changes with their places in that list. */
function heard({ unitList, changes }: State): Pick<SinkResult, 'streams' | 'changes'> {
  const units = unitList.filter((u) => u.first !== undefined);
  if (units.length === unitList.length) return { streams: units.map(toStream), changes };
  const places = new Map(units.map((unit, place) => [unit.index, place]));
  return {
    streams: units.map(toStream),
    changes: changes.map((c) => ({ ...c, stream: places.get(c.stream) ?? c.stream })),
  };
}

/** What the rows of a file came to. */
export function resultOf(state: State, file: string): SinkResult {
  const { counts, unitList, rejected, lastRejected, lastLine, unmatchedLines, wordings } = state;
  const tail = lastRejected?.line === lastLine ? lastRejected : undefined;
  const somethingRead = counts.used + counts.unchanged + counts.unmatched > 0;
  const total = tail !== undefined && !tail.isCut && somethingRead && isTotal(tail);
  const damaged = tail?.isCut === true;
  if (total) {
    counts.rejected -= 1;
    counts.ignored += 1;
  }
  const kept = total || damaged ? rejected.filter((r) => r !== tail) : rejected;
  const notices = rowNotices(file, counts, kept, unmatchedLines, wordings.size);
  return {
    rows: counts,
    ...heard(state),
    gauges: state.gauges.map((g) => g.series()),
    unmatched: [...wordings.entries()]
      .map(([wording, { count, firstLine }]) => ({ wording, count, firstLine }))
      .sort((a, b) => b.count - a.count || a.firstLine - b.firstLine),
    units: unitList.map((u) => u.text),
    notices: damaged ? [...notices, damagedTail(file, tail)] : notices,
    last: { line: state.row.line, text: detached(state.row.text()) },
  };
}
