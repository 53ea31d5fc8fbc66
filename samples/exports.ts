import { formatStamp, type StampStyle } from './stamps.ts';
import { apply, type HalfName, type State, type Story } from './story.ts';
import type { Wording } from './wordings.ts';

/** How a poll looks at a story. */
export interface PollStyle {
  readonly spacingSeconds: number;
  /** Seconds from the begin of the story to the first poll. */
  readonly phaseSeconds: number;
  readonly stamp: StampStyle;
  readonly delimiter: string;
  readonly wording: Wording;
}

const halfSignals = [
  'role',
  'model',
  'serial',
  'firmware',
  'light',
  'link-a',
  'link-b',
  'links',
  'supply',
] as const;
const pairSignals = ['partner-present', 'partner-ready', 'configuration'] as const;
const halves: readonly HalfName[] = ['A', 'B'];

/** Every poll of a story: its instant and the state read. */
function* polls(story: Story, spacingSeconds: number, phaseSeconds: number): Generator<[number, State]> {
  let state = story.begin;
  let next = 0;
  for (let time = story.from + phaseSeconds * 1000; time <= story.to; time += spacingSeconds * 1000) {
    for (
      let event = story.events[next];
      event !== undefined && event.time <= time;
      event = story.events[next]
    ) {
      state = apply(state, event);
      next += 1;
    }
    yield [time, state];
  }
}

/** One row per reading: time, unit, parameter, value. */
export function readingsCsv(story: Story, style: PollStyle): string {
  const { wording, delimiter } = style;
  const rows = [wording.readingColumns.join(delimiter)];
  for (const [time, state] of polls(story, style.spacingSeconds, style.phaseSeconds)) {
    const stamp = formatStamp(time, style.stamp);
    for (const signal of pairSignals) {
      rows.push(
        csvRow(
          [
            stamp,
            wording.unit(story.pair, null),
            wording.parameter(signal),
            wording.value(signal, state.pair[signal]),
          ],
          delimiter,
        ),
      );
    }
    for (const half of halves) {
      for (const signal of halfSignals) {
        const value = state[half][signal];
        // A module that is out reports nothing but its blank identity.
        if (state[half].role === 'none' && !['role', 'model', 'serial', 'firmware'].includes(signal))
          continue;
        rows.push(
          csvRow(
            [stamp, wording.unit(story.pair, half), wording.parameter(signal), wording.value(signal, value)],
            delimiter,
          ),
        );
      }
    }
  }
  return `${rows.join('\n')}\n`;
}

/** One row per poll and half: time, unit, then a column per parameter. Pair signals stand in both rows. */
export function snapshotsByHalf(story: Story, style: PollStyle): string {
  const { wording, delimiter } = style;
  const signals = [...pairSignals, ...halfSignals];
  const rows = [
    csvRow([...wording.readingColumns.slice(0, 2), ...signals.map((s) => wording.parameter(s))], delimiter),
  ];
  for (const [time, state] of polls(story, style.spacingSeconds, style.phaseSeconds)) {
    for (const half of halves) {
      const values = [
        ...pairSignals.map((s) => wording.value(s, state.pair[s])),
        ...halfSignals.map((s) => wording.value(s, state[half][s])),
      ];
      rows.push(
        csvRow([formatStamp(time, style.stamp), wording.unit(story.pair, half), ...values], delimiter),
      );
    }
  }
  return `${rows.join('\n')}\n`;
}

/** One row per poll: what the active and what the standby is, with no word about which half holds which role. */
export function snapshotsByRole(story: Story, style: PollStyle): string {
  const { delimiter } = style;
  const signals = ['serial', 'model', 'firmware', 'light'] as const;
  const names = ['active', 'standby'].flatMap((role) => signals.map((s) => `${role} ${s}`));
  const rows = [csvRow(['time', 'pair', ...pairSignals, ...names], delimiter)];
  for (const [time, state] of polls(story, style.spacingSeconds, style.phaseSeconds)) {
    const active: HalfName = state.B.role === 'active' ? 'B' : 'A';
    const standby: HalfName = active === 'A' ? 'B' : 'A';
    const values = [active, standby].flatMap((half) => signals.map((s) => state[half][s]));
    rows.push(
      csvRow(
        [formatStamp(time, style.stamp), story.pair, ...pairSignals.map((s) => state.pair[s]), ...values],
        delimiter,
      ),
    );
  }
  return `${rows.join('\n')}\n`;
}

/** One message with its instant and unit, as a journal or a log keeps it. */
export interface Message {
  readonly time: number;
  readonly unit: string;
  readonly text: string;
}

/** What a journal holds: the condition at its begin, every event, and ordinary entries in between. */
export function messagesOf(
  story: Story,
  wording: Wording,
  ordinary: readonly Message[] = [],
): readonly Message[] {
  const stated: Message[] = [
    ...pairSignals.map((s) =>
      message(story, story.from, null, wording.message(s, story.begin.pair[s]), wording),
    ),
    ...halves.flatMap((half) =>
      halfSignals.map((s) =>
        message(story, story.from, half, wording.message(s, story.begin[half][s]), wording),
      ),
    ),
  ];
  const happened = story.events.flatMap((e) => {
    // A module that is out says nothing of itself, and nobody journals a blank.
    const text = e.value === '' ? null : wording.message(e.signal, e.value);
    return text === null ? [] : [message(story, e.time, e.half, text, wording)];
  });
  const said = [...stated.filter((m) => m.text !== ''), ...happened];
  return [...said, ...ordinary].sort((a, b) => a.time - b.time);
}

function message(
  story: Story,
  time: number,
  half: HalfName | null,
  text: string | null,
  wording: Wording,
): Message {
  return { time, unit: wording.unit(story.pair, half), text: text ?? '' };
}

/** One row per entry: time, unit, message. */
export function journalCsv(
  messages: readonly Message[],
  columns: readonly string[],
  delimiter: string,
  stamp: StampStyle,
): string {
  const rows = messages.map((m) => csvRow([formatStamp(m.time, stamp), m.unit, m.text], delimiter));
  return `${[csvRow(columns, delimiter), ...rows].join('\n')}\n`;
}

/** One text line per entry: stamp, unit in brackets, message. */
export function textLog(messages: readonly Message[], stamp: StampStyle): string {
  return `${messages.map((m) => `${formatStamp(m.time, stamp)} [${m.unit}] ${m.text}`).join('\n')}\n`;
}

function csvRow(cells: readonly string[], delimiter: string): string {
  return cells
    .map((cell) =>
      /["\n\r]/.test(cell) || cell.includes(delimiter) ? `"${cell.replaceAll('"', '""')}"` : cell,
    )
    .join(delimiter);
}
