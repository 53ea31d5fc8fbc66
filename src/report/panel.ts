import type { HalfAt, SourceLine, Staff, SwapNow } from '../vocabulary.ts';
import { shortCaution } from './cautions.ts';
import { clockLine, isPastLimit, type PanelClock, waitText } from './panel-clock.ts';
import { column, columnsOf, cut, fitted, inLine, type LinePart } from './panel-fit.ts';
import { staffLine } from './panel-staff.ts';
import {
  capital,
  sayAwaited,
  sayConditions,
  sayExpected,
  sayFailed,
  sayHoldPoint,
  sayMissing,
} from './panel-words.ts';

export interface PanelOptions {
  /** IANA name of the zone the instants are shown in. */
  readonly zone: string;
  /** Colours a part for a terminal, or gives it back as it is. */
  readonly paint: (text: string, as: 'verdict' | 'critical' | 'warning') => string;
  readonly clock: PanelClock;
  /** The staff of the last hour; `null` where it is not known. */
  readonly staff: Staff | null;
  /** Columns, 80 at most are used. */
  readonly width: number;
}

const mostColumns = 80;
const mostName = 16;
const lastLines = 2;

/**
 * A swap as it goes, in ten lines: the question with its clock, how long that takes here, whose clock it is, the hold point and its
 * conditions, both halves with the staff of the last hour, the last lines, a caution. Source: look.md, "The swap while it runs".
 */
export function panelText(now: SwapNow, options: PanelOptions): readonly string[] {
  const { zone, paint, clock, staff } = options;
  const columns = Math.min(options.width, mostColumns);
  const hold = now.holdPoint;
  const look = hold.status === 'stop' ? ({ as: 'critical' } as const) : {};
  const lines: readonly (readonly LinePart[])[] = [
    questionParts(now, clock),
    secondParts(now),
    [clockLine(now, clock, zone)],
    [{ text: sayHoldPoint(hold), ...look }, { text: `. ${capital(sayConditions(hold.conditions))}` }],
    [{ text: `  ${sayMissing(hold).join(' ')}`, ...look }],
    ...halfLines(now.halves, staff, columns).map((text) => [{ text }]),
    ...linesRead(now.lines).map((text) => [{ text }]),
    [{ text: shortCaution }],
  ];
  return lines.map((parts) => fitted(parts, columns, paint));
}

/** One line on a pair besides the one that has the panel. */
export function otherPairLine(
  now: SwapNow,
  { paint, clock, width }: Omit<PanelOptions, 'staff' | 'zone'>,
): string {
  const point: LinePart = {
    text: `. ${sayHoldPoint(now.holdPoint)}`,
    ...(now.holdPoint.status === 'stop' ? { as: 'critical' } : {}),
  };
  // Bold is for the one question.
  const question = questionParts(now, clock).map(
    ({ text, as }): LinePart => (as === 'critical' ? { text, as } : { text }),
  );
  return fitted([...question, point], Math.min(width, mostColumns), paint);
}

/** The clock, and that it is past its limit, stand before the words: they are never cut, and always in the same place. */
function questionParts(now: SwapNow, clock: PanelClock): readonly LinePart[] {
  const waited = waitText(now, clock);
  const pair = cut(inLine(now.pair), mostName);
  const late = isPastLimit(now, clock.at) ? ', past its limit' : '';
  return [
    { text: waited === null ? pair : `${pair}  ${waited}`, as: 'verdict' },
    { text: late, as: 'critical' },
    { text: `  ${sayAwaited(now)}`, as: 'verdict' },
  ];
}

/** How long it takes here; where the swap is over, the sentence of its verdict. */
function secondParts(now: SwapNow): readonly LinePart[] {
  const failed: LinePart = { text: sayFailed(now), as: 'critical' };
  if (now.awaits === null)
    return now.swap === null ? [failed] : [{ ...failed, text: inLine(now.swap.statement) }];
  // A time that has to pass, and what a person does, take no usual time.
  const usual = isTimed(now.awaits) ? sayExpected(now.expected) : '';
  return [failed, { text: `${failed.text === '' || usual === '' ? '' : '. '}${usual}` }];
}

function isTimed(awaits: SwapNow['awaits']): boolean {
  return awaits === 'reflash' || awaits === 'ready' || awaits === 'steady';
}

/** A line each half: what it is, and its staff. Always two. */
function halfLines(halves: readonly HalfAt[], drawn: Staff | null, columns: number): readonly string[] {
  const shown = [...halves, ...halves.map(() => undefined), undefined, undefined].slice(0, 2);
  const cells = shown.map((half) => (half === undefined ? [] : cellsOf(half)));
  const widths = [0, 1, 2, 3].map((index) => Math.max(...cells.map((row) => columnsOf(row[index] ?? ''))));
  const words = cells.map((row) => row.map((cell, index) => column(cell, widths[index] ?? 0)).join('  '));
  const most = Math.min(Math.floor(columns / 2), Math.max(...words.map(columnsOf)));
  const room = columns - most - 2;
  return words.map((text, index) => {
    const half = shown[index]?.half;
    const staff = drawn === null || half === undefined ? '' : staffLine(drawn, half, room);
    return `${column(text, most)}  ${staff}`;
  });
}

function cellsOf({ half, isOut, role, light, firmware }: HalfAt): readonly string[] {
  if (isOut) return [inLine(half), 'out', '', ''];
  return [
    inLine(half),
    role === null ? 'role not known' : inLine(role),
    light === null ? '' : `light ${inLine(light)}`,
    firmware === null ? '' : inLine(firmware),
  ];
}

/** The newest lines, the last one at the end; always two. */
function linesRead(lines: readonly SourceLine[]): readonly string[] {
  const last = lines.slice(-lastLines).map(({ file, line, text }) => {
    const name = cut(inLine(file.split(/[\\/]/).at(-1) ?? file), mostName);
    return `${name}:${line}  ${inLine(text)}`;
  });
  return [...last, ...Array.from({ length: lastLines - last.length }, () => '')];
}
