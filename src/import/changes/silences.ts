import { isStateSignal } from '../../vocabulary.ts';
import type { Row } from '../bytes/row.ts';
import { mayEnd, type Parameter } from './parameters.ts';
import { keepChange, type SinkState } from './sink-state.ts';
import { isLongSpan, medianSpan, mostSpacings } from './spacing.ts';
import type { Unit } from './units.ts';

/**
 * Notes a silence that ends with a reading of the unit; true if the parameter is read again by it. It is silent if it was not
 * read for longer than three of the unit's median spacings so far, gaps of the whole unit left out. What comes so seldom by
 * habit, since it was as silent before, is not read again.
 */
export function endsSilence(unit: Unit, parameter: Parameter, at: number): boolean {
  const { lastTime, silentTo, silentFor } = parameter;
  const span = at - lastTime;
  if (lastTime === Number.NEGATIVE_INFINITY || !isLongSpan(unit.spacing, span)) return false;
  const most = mostSpacings * medianSpan(unit.spacing);
  if (span - gapsIn(unit, lastTime, most) <= most) return false;
  const habit = silentTo === lastTime ? silentFor : 0;
  parameter.silentTo = at;
  parameter.silentFor = span;
  return span > mostSpacings * habit;
}

/** How long the unit was not read since an instant, in gaps longer than that. */
function gapsIn({ gaps }: Unit, since: number, longerThan: number): number {
  let sum = 0;
  for (let place = gaps.length - 1; place >= 0; place -= 1) {
    const [from, to] = [gaps[place]?.before.time ?? 0, gaps[place]?.after.time ?? 0];
    if (to <= since) break;
    if (to - from > longerThan) sum += to - from;
  }
  return sum;
}

/**
 * Keeps a reading with the old value that ends a silence: what happened meanwhile was not seen. An identity has none, since
 * its empty cells are readings.
 */
export function keepResumed(state: SinkState, unit: Unit, parameter: Parameter, at: number, row: Row): void {
  const { signal, subject, value, lastTime: earliest } = parameter;
  if (signal === null || !isStateSignal(signal) || typeof value !== 'string' || mayEnd(parameter)) return;
  const stream = unit.index;
  keepChange(state, row, {
    kind: 'reading',
    time: at,
    earliest,
    subject,
    signal,
    value,
    before: value,
    stream,
  });
}
