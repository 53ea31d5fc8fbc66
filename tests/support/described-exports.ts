/** Exports of a story that nothing but a phrasebook explains, each with that phrasebook. */
import type { Message } from '../../samples/exports.ts';
import { halfReadings, halves, type PollStyle, pairReadings, pollsOf } from '../../samples/polls.ts';
import { formatStamp } from '../../samples/stamps.ts';
import type { Story } from '../../samples/story.ts';

/** Files by name, and what the phrasebook says of them. */
export interface DescribedExport {
  readonly files: Readonly<Record<string, string>>;
  readonly rules: readonly string[];
}

const stamp = { form: 'iso', zone: 'UTC', decimals: 3 } as const;
const at = ({ time }: Message): string => formatStamp(time, stamp);
const text = (lines: readonly string[]): string => `${lines.join('\n')}\n`;

/** A file for each unit, whose name stands in no line; `nameOf` gives its path, and `rule` describes them. */
function perUnit(
  messages: readonly Message[],
  nameOf: (unit: string) => string,
  lineOf: (message: Message) => string,
): Readonly<Record<string, string>> {
  const units = [...new Set(messages.map((m) => m.unit))];
  return Object.fromEntries(
    units.map((unit) => [nameOf(unit), text(messages.filter((m) => m.unit === unit).map(lineOf))]),
  );
}

/** The messages of a journal, told in ways that say little themselves. */
export function describedJournals(messages: readonly Message[]): Readonly<Record<string, DescribedExport>> {
  return { ...inFilesOfUnits(messages), ...inOneFile(messages) };
}

function inFilesOfUnits(messages: readonly Message[]): Readonly<Record<string, DescribedExport>> {
  const units = [...new Set(messages.map((m) => m.unit))];
  const plainLine = (m: Message): string => `${at(m)} ${m.text}`;
  const folder = (unit: string): string => `logs/${unit.replace('-', '/')}/events.log`;
  return {
    'a file per unit': {
      files: perUnit(messages, (unit) => `${unit}.log`, plainLine),
      rules: units.map((unit) => `match: ${unit}.log, unit: ${unit}`),
    },
    'a folder per half': {
      files: perUnit(messages, folder, plainLine),
      rules: ['match: "logs/**/*.log", path: "logs/(?<pair>[^/]+)/(?:(?<half>[AB])/)?"'],
    },
  };
}

function inOneFile(messages: readonly Message[]): Readonly<Record<string, DescribedExport>> {
  const begin = Math.floor(Math.min(...messages.map((m) => m.time)) / 1000) * 1000;
  const since = (time: number): string => ((time - begin) / 1000).toFixed(6).padStart(13);
  return {
    'records of several lines': {
      files: {
        'a.log': text(messages.map((m) => `${at(m)} [${m.unit}]\n\n    ${m.text.split(' ').join('\n    ')}`)),
      },
      rules: ['match: "*", record: "^\\\\d{4}-"'],
    },
    'seconds since an instant': {
      files: { 'a.log': text(messages.map((m) => `[${since(m.time)}] ${m.unit}: ${m.text}`)) },
      rules: [`match: "*", time: { since: "${new Date(begin).toISOString()}" }`],
    },
    'JSON with names of its own, counted in microseconds': {
      files: {
        'a.json': text(
          messages.map((m) =>
            JSON.stringify({ AT: `${m.time}000`, HOST: { NAME: m.unit }, MESSAGE: m.text, PRIORITY: 6 }),
          ),
        ),
      },
      rules: [
        'match: "*", time: { epoch: us }, columns: { time: AT, unit: HOST.NAME, message: MESSAGE, severity: PRIORITY }',
      ],
    },
    'a line pattern with pair and half apart': {
      files: {
        'a.log': text(
          messages.map((m) => {
            const [pair, half = '-'] = m.unit.split('-');
            const [date, clock] = at(m).split(' ');
            return `${half}@${pair} <${m.text}> on ${date} at ${clock}`;
          }),
        ),
      },
      rules: [
        'match: "*", line: "^(?:-|(?<half>.))@(?<pair>\\\\S+) <(?<message>.*)> on (?<date>\\\\S+) at (?<clock>\\\\S+)$"',
      ],
    },
    'a table without a header': {
      files: { 'a.csv': text(messages.map((m) => `${m.text};${at(m)};${m.unit}`)) },
      rules: ['match: "*", columns: { time: "#2", unit: "#3", message: "#1" }'],
    },
  };
}

/** The polls of a story, told so. */
export function describedPolls(story: Story, style: PollStyle): Readonly<Record<string, DescribedExport>> {
  const polls = [...pollsOf(story, style)].map((poll) => ({
    time: formatStamp(poll.time, stamp),
    tags: [
      ...pairReadings(poll, style).map((r) => [story.pair, ...r] as const),
      ...halves.flatMap((half) =>
        halfReadings(poll, half, style).map((r) => [`${story.pair}-${half}`, ...r] as const),
      ),
    ],
  }));
  const header = (polls[0]?.tags ?? []).map(([unit, parameter]) => `${unit}.${parameter}`);
  const rule = 'header: "^(?<unit>RO\\\\d(?:-[AB])?)[.](?<parameter>.+)$"';
  return {
    'a wide table': {
      files: {
        'wide.csv': text([
          ['time', ...header, 'spare'].join(','),
          ...polls.map(({ time, tags }) => [time, ...tags.map(([, , value]) => value), '0'].join(',')),
        ]),
      },
      rules: [`match: "*", ${rule}`],
    },
    'readings by number, without a header': {
      files: {
        'poll.csv': text(
          polls.flatMap(({ time, tags }) =>
            tags.map(([unit, name, value]) => `${name};${value};${unit};${time}`),
          ),
        ),
      },
      rules: ['match: "*", columns: { time: "#4", unit: "#3", parameter: "#1", value: "#2" }'],
    },
    'JSON, a reading per line': {
      files: {
        'poll.json': text(
          polls.flatMap(({ time, tags }) =>
            tags.map(([where, tag, v]) => JSON.stringify({ at: time, where, tag, v })),
          ),
        ),
      },
      rules: ['match: "*", columns: { time: at, unit: where, parameter: tag, value: v }'],
    },
  };
}
