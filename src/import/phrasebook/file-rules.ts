import { InputError } from '../bytes/input-error.ts';
import type { DatePattern } from '../clock/date-pattern.ts';
import { datePattern } from '../clock/date-pattern.ts';
import { epochCount, secondsSince } from '../clock/stamp-counts.ts';
import { readStamp } from '../clock/timestamps.ts';
import { isZone } from '../clock/zones.ts';
import type { Pattern } from './patterns.ts';
import type { FileRule, Phrasebook, StampRules } from './phrasebook-rules.ts';
import type { PhrasebookText } from './phrasebook-schema.ts';
import { patternAt, type RuleReading } from './rule-parts.ts';
import { subjectOf } from './subjects.ts';

type FileText = NonNullable<PhrasebookText['files']>[number];

/** Where a rule stands, and what it may speak of. */
interface Place {
  readonly reading: RuleReading;
  readonly index: number;
  readonly units: Phrasebook['units'];
}

/** A rule for files, ready for use. Throws InputError with the place inside the phrasebook and what was expected. */
export function fileRule(place: Place, rule: FileText): FileRule {
  const { reading, index } = place;
  const at = `files[${index}]`;
  const compiled = (key: 'line' | 'path' | 'record' | 'header'): Pattern | undefined => {
    const source = rule[key];
    return source === undefined ? undefined : patternAt(reading, `${at}.${key}`, source, false);
  };
  const [line, path, record, header] = [
    compiled('line'),
    compiled('path'),
    compiled('record'),
    compiled('header'),
  ];
  checkLine(place, line);
  checkPath(place, rule, path);
  checkHeader(place, header);
  checkUnit(place, rule.unit);
  return {
    place: at,
    match: rule.match,
    layout: rule.layout ?? (line === undefined ? undefined : 'lines'),
    columns: rule.columns ?? {},
    line,
    unit: rule.unit,
    path,
    record,
    header,
    time: rule.time === undefined ? undefined : stampRules(reading.file, `${at}.time`, rule.time),
    states: rule.states,
    good: rule.good,
  };
}

function checkLine({ reading: { file }, index }: Place, line: Pattern | undefined): void {
  if (line === undefined) return;
  const has = (group: string): boolean => line.groups.includes(group);
  if (!has('time') && !has('date'))
    throw new InputError(
      file,
      `files[${index}].line has no group (?<time>...) or (?<date>...).`,
      'Add the group time, or date and clock. The other groups are unit, pair, half, role, message, parameter and value.',
    );
  if (has('parameter') !== has('value'))
    throw new InputError(
      file,
      `files[${index}].line has a group ${has('value') ? 'value' : 'parameter'} without a group ${has('value') ? 'parameter' : 'value'}.`,
      'Add both groups, parameter and value.',
    );
}

const pathGroups = ['pair', 'half', 'role', 'unit', 'site'];

function checkPath({ reading: { file }, index }: Place, { unit }: FileText, path: Pattern | undefined): void {
  if (path === undefined) return;
  const strange = path.groups.find((group) => !pathGroups.includes(group));
  if (strange !== undefined)
    throw new InputError(
      file,
      `files[${index}].path has a group (?<${strange}>...), which is not used for a path.`,
      `Choose one of ${pathGroups.join(', ')}.`,
    );
  if (unit === undefined && !path.groups.includes('pair') && !path.groups.includes('unit'))
    throw new InputError(
      file,
      `files[${index}].path has no group (?<pair>...) or (?<unit>...).`,
      'Name the part of the path that gives the pair, or add the key unit.',
    );
}

function checkHeader({ reading: { file }, index }: Place, header: Pattern | undefined): void {
  if (header === undefined || header.groups.includes('parameter')) return;
  throw new InputError(
    file,
    `files[${index}].header has no group (?<parameter>...).`,
    'Name the groups parameter and unit: a column is a parameter of a unit.',
  );
}

function checkUnit({ reading: { file }, index, units }: Place, unit: string | undefined): void {
  if (unit === undefined || subjectOf({ units }, { unit, half: '', role: '' }) !== null) return;
  throw new InputError(
    file,
    `files[${index}].unit is "${unit}", which names no pair.`,
    'Write it like RO1-A, or add a pattern for it under units.',
  );
}

type StampText = NonNullable<FileText['time']>;

/** What a phrasebook says of stamps at a path of it. Throws InputError with that path. */
export function stampRules(file: string, path: string, time: StampText): StampRules {
  const { zone, order, year } = time;
  if (zone !== undefined && !isZone(zone))
    throw new InputError(
      file,
      `${path}.zone is "${zone}", which is no time zone.`,
      'Give an IANA name such as Europe/Lisbon.',
    );
  return { zone, order, year, pattern: stampPattern(file, path, time) };
}

function stampPattern(file: string, path: string, time: StampText): DatePattern | undefined {
  const { format, since, epoch } = time;
  const ways = Object.entries({ format, since, epoch }).filter(([, said]) => said !== undefined);
  if (ways.length > 1)
    throw new InputError(
      file,
      `${path} has ${ways.map(([key]) => key).join(' and ')}: only one of them can apply.`,
      'Keep one of them.',
    );
  if (epoch !== undefined) return epochCount(epoch);
  if (since !== undefined) return secondsSince(instantOf(file, path, since));
  if (format === undefined) return undefined;
  const compiled = datePattern(format);
  if (typeof compiled !== 'string') return compiled;
  throw new InputError(file, `${path}.format: ${compiled}.`, 'Write it like "dd/MM/yyyy HH:mm:ss.SSS".');
}

function instantOf(file: string, path: string, since: string): number {
  const stamp = readStamp(since, { order: undefined, year: undefined, day: undefined });
  if (typeof stamp !== 'string' && stamp.isInstant && stamp.end === since.trimEnd().length)
    return stamp.clock;
  throw new InputError(
    file,
    `${path}.since is "${since}", which is not an instant.`,
    'Write it with its offset, like "2026-03-14T08:00:00Z".',
  );
}
