import type { Change, Gap, GaugeSeries, NonEmpty, Notice, RowCounts, SourceLine, Stream, UnmatchedWording } from '../vocabulary.ts';
import type { Row } from './importer.ts';
import { detached } from './decode.ts';
import { entryReader, type EntryReader } from './entries.ts';
import { gaugeReader, type GaugeReader } from './gauges.ts';
import { type ParameterRule, parameterNamed, type Phrasebook } from './phrasebook.ts';
import { valueMeant } from './values.ts';
import { type Spacing, spacingCounter } from './spacing.ts';
import { addressed, subjectOf, type UnitParts } from './subjects.ts';
import type { Signal, Subject } from '../vocabulary.ts';

/** Where the importers put what they read; it keeps changes only. */
export interface Sink {
  /** A polled value. `parts` says half and role where they stand in columns of their own. */
  reading(at: number, unit: string, parameter: string, value: string, parts?: UnitParts): void;
  /** A journalled message. */
  entry(at: number, unit: string, message: string, parts?: UnitParts): void;
  /** A technician's line: `at` is the stamp, `pair` the pair it is about. */
  note(at: number, pair: string, text: string): void;
  /** The row can not be read. */
  reject(what: string, fix: string): void;
  /** The row is known to mean nothing. */
  ignore(): void;
}

/** The sink as the driver of a file sees it. */
export interface FileSink extends Sink {
  begin(row: Row): void;
  /** Ends the row in exactly one count. */
  finish(): void;
  /** What was read. `endsInRow`: the file does not end with a line end, so its last row may be cut off. */
  result(file: string, endsInRow: boolean): {
    readonly rows: RowCounts;
    readonly streams: readonly Stream[];
    readonly changes: readonly Change[];
    readonly gauges: readonly GaugeSeries[];
    readonly unmatched: readonly UnmatchedWording[];
    readonly units: readonly string[];
    readonly notices: readonly Notice[];
  };
}

interface Parameter {
  readonly rule: ParameterRule;
  readonly signal: Signal | null;
  readonly subject: Subject;
  readonly gauge: GaugeReader | null;
  raw: string | undefined;
  value: string | null | undefined;
  lastTime: number;
}

interface Unit {
  readonly text: string;
  readonly subject: Subject | null;
  readonly index: number;
  readonly kind: Stream['kind'];
  readonly parameters: Map<string, Parameter | string>;
  readonly signals: Set<Signal>;
  readonly spacing: Spacing;
  readonly gaps: Gap[];
  first: { time: number; line: number; text: string } | undefined;
  lastTime: number;
  lastLine: number;
  lastText: string;
  gapsFrom: number;
}

const mostWordings = 1000;
const gapCandidates = 256;

/** A sink for one file. */
export function fileSink(phrasebook: Phrasebook): FileSink {
  const counts = { read: 0, used: 0, unchanged: 0, ignored: 0, unmatched: 0, rejected: 0 };
  const units = new Map<string, Unit>();
  const changes: Change[] = [];
  const wordings = new Map<string, { count: number; firstLine: number }>();
  const rejected: { line: number; text: string; what: string; fix: string }[] = [];
  const unmatchedLines: { line: number; text: string }[] = [];
  const gauges: GaugeReader[] = [];
  const entries: EntryReader = entryReader(phrasebook);
  let row: Row | undefined;
  let outcome: 'none' | 'unchanged' | 'ignored' | 'unmatched' | 'used' | 'rejected' = 'none';
  let lastRejected: { line: number; text: string; what: string; fix: string } | undefined;
  let lastEntry: { key: string; change: number } | undefined;

  const line = (): number => row?.line ?? 0;
  const text = (): string => detached(row?.text() ?? '');

  const mark = (found: typeof outcome): void => {
    if (rank[found] > rank[outcome]) outcome = found;
  };

  const unmatched = (wording: string): void => {
    mark('unmatched');
    const known = wordings.get(wording);
    if (known !== undefined) known.count += 1;
    else if (wordings.size < mostWordings) wordings.set(detached(wording), { count: 1, firstLine: line() });
    else bump(wordings, '(further wordings)', line());
  };

  const unitOf = (unit: string, parts: UnitParts | undefined, kind: Stream['kind']): Unit => {
    const key = parts === undefined ? unit : `${parts.unit}\n${parts.half}\n${parts.role}`;
    const known = units.get(key);
    if (known !== undefined) return known;
    const subject = subjectOf(phrasebook, parts ?? { unit, half: '', role: '' });
    const made = newUnit(detached(unitText(unit, parts)), subject, units.size, kind);
    units.set(detached(key), made);
    return made;
  };

  const touch = (unit: Unit, at: number): void => {
    if (unit.first === undefined) {
      unit.first = { time: at, line: line(), text: text() };
    } else if (at - unit.lastTime > unit.gapsFrom && unit.kind === 'reading') {
      keepGap(unit, at, line(), text());
    }
    if (at < unit.lastTime) return;
    unit.lastTime = at;
    unit.lastLine = line();
    unit.lastText = row?.text() ?? '';
  };

  const push = (change: Omit<Change, 'line' | 'text' | 'count'>): void => {
    mark('used');
    changes.push({ ...change, line: line(), text: text(), count: 1 });
  };

  const parameterOf = (unit: Unit, subject: Subject, name: string): Parameter | string => {
    const known = unit.parameters.get(name);
    if (known !== undefined) return known;
    const made = newParameter(phrasebook, subject, name);
    if (typeof made !== 'string' && made.gauge !== null) gauges.push(made.gauge);
    unit.parameters.set(detached(name), made);
    return made;
  };

  return {
    begin(next) {
      row = next;
      outcome = 'none';
      lastRejected = undefined;
      counts.read += 1;
    },
    finish() {
      // A row in which nothing at all was found says nothing new: an empty cell is no reading.
      counts[outcome === 'none' ? 'unchanged' : outcome] += 1;
      if (outcome === 'unmatched' && unmatchedLines.length < 5) unmatchedLines.push({ line: line(), text: text() });
    },
    reading(at, unitName, name, value, parts) {
      const unit = unitOf(unitName, parts, 'reading');
      if (unit.subject === null) {
        unmatched(`unit ${unit.text}`);
        return;
      }
      const parameter = parameterOf(unit, unit.subject, name);
      if (typeof parameter === 'string') {
        if (parameter === '') mark('ignored');
        else if (value !== '') unmatched(parameter);
        return;
      }
      if (value === '' && !mayEnd(parameter)) return;
      touch(unit, at);
      if (parameter.lastTime !== Number.NEGATIVE_INFINITY) unit.spacing.add(at - parameter.lastTime);
      if (parameter.gauge !== null) {
        parameter.lastTime = at;
        if (parameter.gauge.add(at, value)) mark('used');
        else unmatched(`${name} = ${value}`);
        return;
      }
      if (value === parameter.raw) {
        parameter.lastTime = Math.max(at, parameter.lastTime);
        mark('unchanged');
        return;
      }
      const meant = value === '' ? null : valueMeant(parameter.rule.signal, parameter.rule.values, value);
      if (meant === undefined) {
        unmatched(`${name} = ${value}`);
        return;
      }
      const signal = parameter.signal;
      if (signal === null) return;
      const first = parameter.value === undefined;
      const changed = meant !== parameter.value && !(first && meant === null);
      if (changed) {
        unit.signals.add(signal);
        push({
          kind: 'reading',
          time: at,
          earliest: parameter.lastTime === Number.NEGATIVE_INFINITY ? at : Math.min(parameter.lastTime, at),
          subject: parameter.subject,
          signal,
          value: meant === null ? null : detached(meant),
          before: parameter.value ?? null,
          stream: unit.index,
        });
      } else mark('unchanged');
      parameter.raw = detached(value);
      parameter.value = meant === null ? null : detached(meant);
      parameter.lastTime = at;
    },
    entry(at, unitName, message, parts) {
      const unit = unitOf(unitName, parts, 'entry');
      const key = `${at}\n${unit.text}\n${message}`;
      if (lastEntry?.key === key) {
        const same = changes[lastEntry.change];
        if (same !== undefined) changes[lastEntry.change] = { ...same, count: same.count + 1 };
        mark('unchanged');
        return;
      }
      lastEntry = undefined;
      const found = entries.read(unit.subject, unit.text, message);
      if (unit.subject !== null) touch(unit, at);
      if (found === 'ignored') mark('ignored');
      else if (typeof found === 'string') unmatched(found);
      else {
        unit.signals.add(found.signal);
        lastEntry = { key, change: changes.length };
        push({ kind: 'entry', time: at, earliest: at, before: null, stream: unit.index, ...found });
      }
    },
    note(at, pair, words) {
      const unit = unitOf(pair, undefined, 'note');
      const subject = unit.subject ?? { pair, half: null, role: null };
      touch(unit, at);
      const found = entries.readNote(subject, words);
      unit.signals.add(found.signal);
      push({ kind: 'note', time: at + minuteMs, earliest: at, before: null, stream: unit.index, ...found });
    },
    reject(what, fix) {
      outcome = 'rejected';
      lastRejected = { line: line(), text: text(), what, fix };
      if (rejected.length < 5) rejected.push({ line: line(), text: text(), what, fix });
    },
    ignore() {
      mark('ignored');
    },
    result(file, endsInRow) {
      const tail = lastRejected;
      const isTotal = tail !== undefined && !endsInRow ? hasNoTime(tail.what) : false;
      if (isTotal) {
        // A last row without a time is a total, known to mean nothing.
        counts.rejected -= 1;
        counts.ignored += 1;
      }
      const isDamaged = tail !== undefined && endsInRow;
      const kept = isTotal || isDamaged ? rejected.filter((r) => r.line !== tail?.line) : rejected;
      return {
        rows: counts,
        streams: [...units.values()].map(toStream),
        changes,
        gauges: gauges.map((g) => g.series()),
        unmatched: [...wordings.entries()]
          .map(([wording, { count, firstLine }]) => ({ wording, count, firstLine }))
          .sort((a, b) => b.count - a.count || a.firstLine - b.firstLine),
        units: [...units.values()].map((u) => u.text),
        notices: [...noticesOf(file, counts, kept, unmatchedLines, wordings), ...(isDamaged ? [damagedTail(file, tail)] : [])],
      };
    },
  };
}

const minuteMs = 60_000;

function hasNoTime(what: string): boolean {
  return what.endsWith('is not a date.') || what.endsWith('too few columns.');
}

function damagedTail(file: string, { line, text }: { line: number; text: string }): Notice {
  const what = `The file ends in the middle of line ${line}: that row is lost.`;
  return { id: 'damaged-tail', what, fix: 'Export it again if the end matters.', count: 1, from: null, to: null, lines: [{ file, line, text }] };
}

const rank = { none: 0, ignored: 1, unchanged: 2, unmatched: 3, used: 4, rejected: 5 } as const;

function bump(wordings: Map<string, { count: number; firstLine: number }>, wording: string, firstLine: number): void {
  const known = wordings.get(wording);
  if (known === undefined) wordings.set(wording, { count: 1, firstLine });
  else known.count += 1;
}

function unitText(unit: string, parts: UnitParts | undefined): string {
  return parts === undefined ? unit : [parts.unit, parts.half, parts.role].filter((part) => part !== '').join(' ');
}

function newUnit(text: string, subject: Subject | null, index: number, kind: Stream['kind']): Unit {
  return {
    text,
    subject,
    index,
    kind,
    parameters: new Map(),
    signals: new Set(),
    spacing: spacingCounter(),
    gaps: [],
    first: undefined,
    lastTime: Number.NEGATIVE_INFINITY,
    lastLine: 0,
    lastText: '',
    gapsFrom: 0,
  };
}

/** A parameter of a unit; a text if it can not be used: the wording, or nothing where it is known to mean nothing. */
function newParameter(phrasebook: Phrasebook, unit: Subject, name: string): Parameter | string {
  const rule = parameterNamed(phrasebook, name);
  if (rule === undefined) {
    const known = phrasebook.ignore.some((pattern) => pattern.match(name) !== null);
    return known ? '' : `parameter ${name}`;
  }
  // "active: role active" says nothing: the unit is the role.
  if (rule.signal === 'role' && unit.half === null && unit.role !== null) return '';
  const subject = addressed(unit, rule.signal, rule.subject);
  if (subject === null) return `parameter ${name} (names no half and no role)`;
  const isGauge = rule.signal === 'load' || rule.signal === 'free-memory';
  return {
    rule,
    subject,
    signal: isGauge ? null : toSignal(rule.signal),
    gauge: isGauge ? gaugeReader(subject, rule.signal === 'load' ? 'load' : 'free-memory', rule.scale) : null,
    raw: undefined,
    value: undefined,
    lastTime: Number.NEGATIVE_INFINITY,
  };
}

function toSignal(signal: ParameterRule['signal']): Signal | null {
  return signal === 'load' || signal === 'free-memory' ? null : signal;
}

/** Only an identity can end: any other empty cell is no reading. */
function mayEnd({ rule }: Parameter): boolean {
  return rule.signal === 'serial' || rule.signal === 'model' || rule.signal === 'firmware';
}

function keepGap(unit: Unit, at: number, line: number, text: string): void {
  const before = { time: unit.lastTime, line: unit.lastLine, text: detached(unit.lastText) };
  unit.gaps.push({ before, after: { time: at, line, text } });
  if (unit.gaps.length < gapCandidates || unit.gapsFrom > 0) return;
  // By now the usual spacing is known: only what is longer can be a gap.
  unit.gapsFrom = 3 * unit.spacing.median();
  unit.gaps.splice(0, unit.gaps.length, ...unit.gaps.filter((g) => g.after.time - g.before.time > unit.gapsFrom));
}

function toStream(unit: Unit): Stream {
  const spacing = unit.kind === 'reading' ? unit.spacing.median() : 0;
  const point = { time: unit.lastTime, line: unit.lastLine, text: detached(unit.lastText) };
  return {
    kind: unit.kind,
    unit: unit.text,
    subject: unit.subject ?? { pair: '', half: null, role: null },
    signals: [...unit.signals],
    first: unit.first ?? point,
    last: point,
    spacing,
    gaps: spacing === 0 ? [] : unit.gaps.filter((g) => g.after.time - g.before.time > 3 * spacing),
  };
}

function noticesOf(
  file: string,
  counts: RowCounts,
  rejected: readonly { line: number; text: string; what: string; fix: string }[],
  unmatched: readonly { line: number; text: string }[],
  wordings: ReadonlyMap<string, { count: number; firstLine: number }>,
): readonly Notice[] {
  const [worst, ...others] = rejected;
  const [odd, ...odds] = unmatched;
  const at = ({ line, text }: { line: number; text: string }): SourceLine => ({ file, line, text });
  const notices: Notice[] = [];
  if (worst !== undefined) {
    const lines: NonEmpty<SourceLine> = [at(worst), ...others.map(at)];
    const what = `${plural(counts.rejected, 'row')} could not be read; the first is line ${worst.line}: ${worst.what}`;
    notices.push({ id: 'rejected-rows', what, fix: worst.fix, count: counts.rejected, from: null, to: null, lines });
  }
  if (odd !== undefined) {
    const lines: NonEmpty<SourceLine> = [at(odd), ...odds.map(at)];
    const what = `${plural(counts.unmatched, 'row')} in ${plural(wordings.size, 'wording')} could not be understood; the first is line ${odd.line}.`;
    notices.push({ id: 'unmatched-wording', what, fix: 'Add the wording to the phrasebook.', count: counts.unmatched, from: null, to: null, lines });
  }
  return notices;
}

function plural(count: number, word: string): string {
  return count === 1 ? `one ${word}` : `${count} ${word}s`;
}
