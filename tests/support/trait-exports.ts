/** Traits of exports beside their layout: columns of tags, qualities, states of conditions, values in German. */
import { csvRow, type Message } from '../../samples/exports.ts';
import {
  halfReadings,
  halves,
  type Poll,
  type PollStyle,
  pairReadings,
  pollsOf,
  stampCells,
  stampColumns,
} from '../../samples/polls.ts';
import { formatStamp, type StampStyle } from '../../samples/stamps.ts';
import type { Story } from '../../samples/story.ts';
import { plain, type Wording } from '../../samples/wordings.ts';

type Tag = readonly [unit: string, parameter: string, value: string];

function tagsOf(poll: Poll, style: PollStyle): readonly Tag[] {
  const { unit } = style.wording;
  return [
    ...pairReadings(poll, style).map((r) => [unit(poll.pair, null), ...r] as const),
    ...halves.flatMap((half) =>
      halfReadings(poll, half, style).map((r) => [unit(poll.pair, half), ...r] as const),
    ),
  ];
}

const text = (rows: readonly (readonly string[])[], { delimiter }: Pick<PollStyle, 'delimiter'>): string =>
  `${rows.map((cells) => csvRow(cells, delimiter)).join('\n')}\n`;

/** Between two polls one whose values are those of the last poll, all of bad quality: it observed nothing. */
function withBadPolls(polls: readonly Poll[]): readonly (readonly [Poll, string])[] {
  const last = polls.at(-1);
  return polls.flatMap((poll, index) => {
    const bad = last === undefined || index % 3 !== 0 ? [] : [{ ...last, time: poll.time + 4000 }];
    return [[poll, 'Good'] as const, ...bad.map((other) => [other, 'Bad'] as const)];
  });
}

/** One row per poll, a column per tag. */
export function wideCsv(story: Story, style: PollStyle): string {
  const polls = pollsOf(story, style).map((poll) => ({ poll, tags: tagsOf(poll, style) }));
  const names = (polls[0]?.tags ?? []).map(([unit, parameter]) => `${unit}.${parameter}`);
  const rows = polls.map(({ poll, tags }) => [...stampCells(poll.time, style), ...tags.map(([, , v]) => v)]);
  return text([[...stampColumns(style), ...names], ...rows], style);
}

/** The same with a quality beside each value; some polls are of bad quality. */
export function wideWithQualities(story: Story, style: PollStyle): string {
  const polls = withBadPolls(pollsOf(story, style)).map(([poll, quality]) => ({
    poll,
    tags: tagsOf(poll, style),
    quality,
  }));
  const names = (polls[0]?.tags ?? []).flatMap(([unit, parameter]) => [`${unit}.${parameter}`, 'Quality']);
  const rows = polls.map(({ poll, tags, quality }) => [
    ...stampCells(poll.time, style),
    ...tags.flatMap(([, , value]) => [value, quality]),
  ]);
  return text([[...stampColumns(style), ...names], ...rows], style);
}

/** One row per reading with its quality. */
export function readingsWithQuality(story: Story, style: PollStyle): string {
  const rows = withBadPolls(pollsOf(story, style)).flatMap(([poll, quality]) =>
    tagsOf(poll, style).map((tag) => [...stampCells(poll.time, style), ...tag, quality]),
  );
  return text([[...stampColumns(style), 'unit', 'parameter', 'value', 'quality'], ...rows], style);
}

const germanValues: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  role: { active: 'aktiv', standby: 'Bereitschaft', none: 'keine' },
  light: { steady: 'leuchtet', flashing: 'blinkt', off: 'aus' },
  'link-a': { up: 'verbunden', down: 'getrennt' },
  'link-b': { up: 'verbunden', down: 'unterbrochen' },
  links: { straight: 'gerade', crossed: 'gekreuzt' },
  supply: { good: 'gut', fault: 'Störung' },
  'partner-present': { yes: 'ja', no: 'nein' },
  'partner-ready': { yes: 'bereit', no: 'nein' },
  configuration: { current: 'aktuell', pending: 'ausstehend' },
};

/** Values as a German export writes them. */
export const german: Wording = { ...plain, value: (signal, value) => germanValues[signal]?.[value] ?? value };

/** What a message says no longer stands, by what says that it does. */
const conditions: readonly (readonly [gone: RegExp, stands: string])[] = [
  [/^partner not ready$/, 'partner ready'],
  [/^partner absent$/, 'partner present'],
  [/^(link [ab]) down$/, '$1 up'],
  [/^supply good$/, 'supply fault'],
];

/** A list of conditions, each with its state; what has no opposite is a condition that stands. */
export function alarmCsv(messages: readonly Message[], delimiter: string, stamp: StampStyle): string {
  const rows = messages.map(({ time, unit, text: said }) => {
    const gone = conditions.find(([pattern]) => pattern.test(said));
    const condition = gone === undefined ? said : said.replace(gone[0], gone[1]);
    return [formatStamp(time, stamp), unit, condition, gone === undefined ? 'ACTIVE' : 'CLEARED'];
  });
  return text([['time', 'unit', 'message', 'state'], ...rows], { delimiter });
}
