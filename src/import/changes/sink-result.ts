import { withTopics } from '../../changes.ts';
import type { Became, Stream, Subject } from '../../vocabulary.ts';
import { type ClockOrder, type ClockStep, stepsOf } from '../clock/clock-order.ts';
import { furtherText, mostUnits } from './find-unit.ts';
import { phrasebookNotices } from './phrasebook-notices.ts';
import { damagedTail, isTotal, rowNotices, tooManyUnits } from './row-notices.ts';
import type { SinkResult } from './sink.ts';
import { countsOf, type SinkState } from './sink-state.ts';
import { toStream, type Unit } from './units.ts';
import { wrongHalfNotices } from './wrong-half.ts';

/** Of a unit that no pair is known for. */
const noSubject: Subject = { pair: '', half: null, role: null };

/** Where the clock of the file was set back, by all its parameters and units. */
export function clockStepsOf({ unitList }: SinkState): readonly ClockStep[] {
  return stepsOf(unitList.flatMap(ordersOf));
}

function ordersOf({ order, parameters }: Unit): readonly ClockOrder[] {
  return [order, ...[...parameters.values()].flatMap((p) => (typeof p === 'string' ? [] : [p.order]))];
}

/** The streams of the units that said something, and the changes with their places in that list. */
function heard({ unitList, changes }: SinkState): Pick<SinkResult, 'streams' | 'changes'> {
  const pairs = new Set(unitList.flatMap((u) => (u.first === undefined ? [] : [u.subject?.pair])));
  const places = new Map<number, number>();
  const streams: Stream[] = [];
  for (const unit of unitList) {
    // Of a pair that nothing else is known of it may be no pair at all: any name looks like one.
    const isKnown = pairs.has(unit.subject?.pair);
    const stream = toStream(unit, isKnown && unit.subject !== null ? unit.subject : noSubject);
    if (stream !== null) places.set(unit.index, streams.push(stream) - 1);
  }
  const told = changes.soFar();
  if (streams.length === unitList.length) return { streams, changes: told };
  const placed = withTopics(told, (topic) => ({
    ...topic,
    stream: places.get(topic.stream) ?? topic.stream,
  }));
  return { streams, changes: placed };
}

/** What the parameters became, each name once for all units; one that is of use to any unit is. */
function parametersOf(units: readonly Unit[]): readonly Became[] {
  const found = new Map<string, string | null>();
  for (const [name, parameter] of units.flatMap((u) => [...u.parameters])) {
    const meaning = typeof parameter === 'string' ? null : parameter.rule.signal;
    found.set(name, meaning ?? found.get(name) ?? null);
  }
  return [...found].map(([name, meaning]) => ({ name, meaning }));
}

/** What the rows of a file came to. */
export function resultOf(state: SinkState, file: string): SinkResult {
  const { unitList, rejected, lastRejected, lastLine, unmatchedLines, wordings } = state;
  const tail = lastRejected?.line === lastLine ? lastRejected : undefined;
  const counted = countsOf(state);
  const somethingRead = counted.used + counted.unchanged + counted.unmatched > 0;
  const total = tail !== undefined && !tail.isCut && somethingRead && isTotal(tail);
  const damaged = tail?.isCut === true;
  const counts = total
    ? { ...counted, rejected: counted.rejected - 1, ignored: counted.ignored + 1 }
    : counted;
  const kept = total || damaged ? rejected.filter((r) => r !== tail) : rejected;
  const notices = rowNotices(file, counts, kept, unmatchedLines, wordings.size);
  const last = { line: state.row.line, text: state.row.ownText() };
  const found = heard(state);
  return {
    rows: counts,
    ...found,
    gauges: state.gauges.map((g) => g.series()),
    unknown: [...wordings.entries()]
      .map(([wording, { kind, name, values, count, firstLine }]) => ({
        wording,
        count,
        firstLine,
        kind,
        name,
        values: [...values],
      }))
      .sort((a, b) => b.count - a.count || a.firstLine - b.firstLine),
    unknownRows: state.wordingRows.rows,
    parameters: parametersOf(unitList),
    // A row that leaves its unit to the names of its parameters has none of its own.
    units: unitList.filter((u) => u.named.size === 0 || u.first !== undefined).map((u) => u.text),
    notices: [
      ...notices,
      ...phrasebookNotices(file, state),
      ...wrongHalfNotices(file, found.streams, unitList),
      ...(damaged ? [damagedTail(file, tail)] : []),
      ...(state.units.has(furtherText) ? [tooManyUnits(file, mostUnits, last)] : []),
    ],
    last,
  };
}
