import { topicAt } from '../changes.ts';
import type { Interval } from '../vocabulary.ts';
import { InputError } from './bytes/input-error.ts';
import type { SinkResult } from './changes/sink.ts';
import type { TimeReader } from './clock/time-reader.ts';
import { timeColumns } from './layouts/head.ts';
import type { Plan } from './layouts/recognise.ts';

/** A file whose stamps are in doubt. */
export interface Stamped {
  readonly file: string;
  readonly plan: Plan;
  readonly times: Pick<TimeReader, 'extent' | 'lastStamp'>;
  readonly result: Pick<SinkResult, 'rows' | 'changes' | 'last'>;
}

const dayMs = 86_400_000;
/** Fewer rows at one time may be a dump of all that there is. Chosen here. */
const leastRows = 20;
/** So often nothing changes within one instant. Chosen here. */
const mostTold = 4;
/** Counts of seconds before the first are counts from another start; nothing is logged after the last. Chosen here. */
const earliest = Date.UTC(1990, 0, 1);
const latest = Date.UTC(2100, 0, 1);

/**
 * Refuses a file whose stamps cannot be right: all of them in one instant in which one thing changes again and again; dates
 * without any clock; a year that cannot be. Throws InputError with an example and the line of the phrasebook that would
 * say it.
 */
export function refuseStamps(stamped: Stamped): void {
  const extent = stamped.times.extent();
  if (extent === null || stamped.result.rows.read === 0) return;
  refuseYear(stamped, extent);
  refuseMidnight(stamped, extent);
  refuseInstant(stamped, extent);
}

function base(file: string): string {
  return JSON.stringify(file.split(/[/\\]/).at(-1) ?? file);
}

/** Where the stamps stand, and an example: the last row that was read. */
function place({ plan, result, times }: Stamped): string {
  const names = timeColumns(plan.head).map((column) => `"${plan.head.names[column] ?? ''}"`);
  const { text, line } = result.last;
  if (plan.importer.shape === 'table')
    return `column ${names.join(' and ')}, as in line ${line}: "${text.slice(0, 60)}"`;
  return `line ${line}, "${text.slice(0, Math.max(times.lastStamp()?.end ?? 0, 20))}"`;
}

function timeRule({ file, plan }: Stamped, rule: string): string {
  const match = `match: ${base(file)}`;
  return plan.importer.shape === 'table'
    ? `files: [{ ${match}, columns: { ${rule} } }]`
    : `files: [{ ${match}, line: "^(?<time>\\\\S+ \\\\S+) (?<unit>\\\\S+) (?<message>.*)$" }]`;
}

function refuseYear(stamped: Stamped, { from, to }: Interval): void {
  // A clock that lost its battery begins in 1970, and prints it: durations are right. A bare count is another matter.
  const isCount = to < earliest && !/\d{4}-\d|\d[/.:]\d|[A-Z][a-z]{2}/.test(stamped.result.last.text);
  if (from < latest && !isCount) return;
  const year = new Date(from < latest ? to : from).getUTCFullYear();
  throw new InputError(
    stamped.file,
    `all its timestamps are in the year ${year} or ${from < latest ? 'before' : 'after'}, which cannot be right: ${place(stamped)}.`,
    isCount
      ? `If they count from a start, give the start: files: [{ match: ${base(stamped.file)}, time: { since: "2026-03-14T08:00:00Z" } }].`
      : `Give their format in the phrasebook, time: { format: "dd/MM/yyyy HH:mm:ss" }, or their column: ${timeRule(stamped, 'time: NAME')}.`,
  );
}

/** A table whose dates have no clock: their rows would all stand at midnight. */
function refuseMidnight(stamped: Stamped, { from, to }: Interval): void {
  const { plan, result, times } = stamped;
  const [column, more] = timeColumns(plan.head);
  if (plan.importer.shape !== 'table' || column === undefined || more !== undefined) return;
  const stamp = times.lastStamp();
  const isMidnight = stamp !== undefined && stamp.clock % dayMs === 0 && (to - from) % dayMs === 0;
  if (result.rows.read < 2 || !isMidnight || /\d:\d|\d{9}/.test(result.last.text)) return;
  throw new InputError(
    stamped.file,
    `its timestamps are dates without a time of day, so every row would be at midnight: ${place(stamped)}.`,
    `Name the column of the clock in the phrasebook: ${timeRule(stamped, `date: ${JSON.stringify(plan.head.names[column])}, clock: NAME`)}.`,
  );
}

function refuseInstant(stamped: Stamped, { from, to }: Interval): void {
  const { result } = stamped;
  if (from !== to || result.rows.read < leastRows) return;
  const { changes } = result;
  if (changes.topics.some(({ kind }) => kind === 'note')) return;
  const told = new Map<string, number>();
  for (let place = 0; place < changes.length; place += 1) {
    const topic = topicAt(changes, place);
    const key = `${topic?.stream} ${topic?.signal} ${topic?.subject.half} ${topic?.subject.role}`;
    told.set(key, (told.get(key) ?? 0) + 1);
  }
  if (Math.max(0, ...told.values()) <= mostTold) return;
  throw new InputError(
    stamped.file,
    `all its ${result.rows.read} rows have one time, ${new Date(from).toISOString()}, and report the same thing again and again: ${place(stamped)}.`,
    `Name the column with the time of each row in the phrasebook: ${timeRule(stamped, 'time: NAME')}.`,
  );
}
