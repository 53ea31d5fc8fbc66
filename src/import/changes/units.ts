import {
  type Gap,
  isStateSignal,
  type Signal,
  type SignalRead,
  type Stream,
  type Subject,
} from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { type KeptRow, keptRow, keptText, type Row } from '../bytes/row.ts';
import { type ClockOrder, clockOrder } from '../clock/clock-order.ts';
import type { UnitMeant, UnitParts } from '../phrasebook/subjects.ts';
import type { Condition } from './conditions.ts';
import { endsOf, minutesOf, type NotUnderstood } from './not-understood.ts';
import { type Parameter, readUntil } from './parameters.ts';
import { medianSpan, mostSpacings, noSpacing, type Spacing } from './spacing.ts';

/** What one file says under one unit text, while it is read. */
export interface Unit {
  readonly text: string;
  readonly subject: Subject | null;
  /** The site says that its rows mean nothing. */
  isIgnored: boolean;
  /** Where the name of a parameter says of which unit it is: that unit. */
  readonly named: Map<string, Unit>;
  /** What says so; `column` where a column says that it holds pairs, or the half or the role beside it. */
  readonly by: UnitMeant['by'] | 'column';
  /** The half that its own text says, where a column beside it says another. */
  saysHalf: string | null;
  /** Its half is said by the file alone: a message that names another is about that one. */
  isHalfOfFile: boolean;
  readonly index: number;
  readonly kind: Stream['kind'];
  /** A text stands for a parameter that cannot be used: its wording, or nothing where it is known to mean nothing. */
  readonly parameters: Map<string, Parameter | string>;
  readonly signals: Set<Signal>;
  readonly spacing: Spacing;
  readonly gaps: Gap[];
  /** Of its entries; readings are followed parameter by parameter. */
  readonly order: ClockOrder;
  first: { readonly time: number; readonly line: number; readonly text: string } | undefined;
  lastTime: number;
  lastLine: number;
  readonly lastRow: KeptRow;
  /** The last entry, if the unit's last line was one: the same line again within its second is no other. */
  lastEntry:
    | {
        readonly message: string;
        readonly condition: Condition | null;
        readonly at: number;
        /** Its changes: from this one on, so many. */
        readonly change: number;
        readonly count: number;
      }
    | undefined;
  /** Spans longer than this may be gaps, in milliseconds. */
  gapsFrom: number;
  /** Its rows that were not understood; `null` without any. */
  notUnderstood: NotUnderstood | null;
}

/** From so many spans on, the usual spacing is known well enough to pass over what is usual. */
const gapCandidates = 256;
/** A poll may become faster later, and then shorter spans are gaps: they are dropped only where they are too many to keep. */
const mostCandidates = 4096;

export function newUnit(
  text: string,
  subject: Subject | null,
  by: Unit['by'],
  index: number,
  kind: Stream['kind'],
): Unit {
  return {
    text,
    subject,
    isIgnored: false,
    named: new Map(),
    by,
    saysHalf: null,
    isHalfOfFile: false,
    index,
    kind,
    parameters: new Map(),
    signals: new Set(),
    spacing: noSpacing(),
    gaps: [],
    order: clockOrder(),
    first: undefined,
    lastTime: Number.NEGATIVE_INFINITY,
    lastLine: 0,
    lastRow: keptRow(),
    lastEntry: undefined,
    gapsFrom: 0,
    notUnderstood: null,
  };
}

/** How a unit is named where half and role stand in columns of their own. */
export function unitText(unit: string, parts: UnitParts | undefined): string {
  return parts === undefined
    ? unit
    : [parts.pair ?? '', parts.unit, parts.half, parts.role].filter((part) => part !== '').join(' ');
}

/** Notes that the unit was read at an instant. */
export function touch(unit: Unit, at: number, row: Row): void {
  // Most readings of a poll come at the instant of the one before.
  if (at === unit.lastTime && unit.first !== undefined) {
    touchLast(unit, at, row);
    return;
  }
  if (unit.first === undefined) unit.first = { time: at, line: row.line, text: row.ownText() };
  else if (unit.kind === 'reading' && at - unit.lastTime > unit.gapsFrom) keepGap(unit, at, row);
  if (at < unit.first.time) unit.first = { time: at, line: row.line, text: row.ownText() };
  if (at >= unit.lastTime) touchLast(unit, at, row);
}

/** Notes the last row of the unit so far. */
export function touchLast(unit: Unit, at: number, row: Row): void {
  unit.lastTime = at;
  unit.lastLine = row.line;
  row.keep(unit.lastRow);
}

function keepGap(unit: Unit, at: number, row: Row): void {
  const before = { time: unit.lastTime, line: unit.lastLine, text: detached(keptText(unit.lastRow)) };
  unit.gaps.push({ before, after: { time: at, line: row.line, text: row.ownText() } });
  const isFull = unit.gaps.length % mostCandidates === 0;
  if (!isFull && (unit.gaps.length < gapCandidates || unit.gapsFrom > 0)) return;
  unit.gapsFrom = (isFull ? mostSpacings : 1.5) * medianSpan(unit.spacing);
  unit.gaps.splice(
    0,
    unit.gaps.length,
    ...unit.gaps.filter((g) => g.after.time - g.before.time > unit.gapsFrom),
  );
}

/** What a unit came to; `null` for one of which no row was understood nor counted. */
export function toStream(unit: Unit, subject: Subject): Stream | null {
  const ends = endsOfUnit(unit);
  if (ends === null) return null;
  const spacing = unit.kind === 'reading' ? medianSpan(unit.spacing) : 0;
  return {
    kind: unit.kind,
    unit: unit.text,
    subject,
    signals: [...unit.signals],
    ...ends,
    spacing,
    reads: readsOf(unit),
    notUnderstood: minutesOf(unit.notUnderstood),
    gaps: spacing === 0 ? [] : unit.gaps.filter((g) => g.after.time - g.before.time > mostSpacings * spacing),
  };
}

function endsOfUnit({
  first,
  lastTime,
  lastLine,
  lastRow,
  notUnderstood,
}: Unit): Pick<Stream, 'first' | 'last'> | null {
  if (first !== undefined)
    return { first, last: { time: lastTime, line: lastLine, text: detached(keptText(lastRow)) } };
  return notUnderstood === null ? null : endsOf(notUnderstood);
}

/** Until when each state was read; of two parameters that tell the same of the same, the later. */
function readsOf({ parameters, signals }: Unit): readonly SignalRead[] {
  const reads = new Map<string, SignalRead>();
  for (const parameter of parameters.values()) {
    if (typeof parameter === 'string') continue;
    const { subject, signal, value } = parameter;
    // A serial that was never anything but empty tells nothing.
    if (value === undefined || signal === null || !isStateSignal(signal) || !signals.has(signal)) continue;
    const key = `${subject.half ?? ''}\n${subject.role ?? ''}\n${signal}`;
    const to = Math.max(readUntil(parameter), reads.get(key)?.to ?? Number.NEGATIVE_INFINITY);
    reads.set(key, { subject, signal, to });
  }
  return [...reads.values()];
}
