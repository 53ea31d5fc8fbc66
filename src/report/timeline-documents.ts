import type { Input, PairTimeline, TimelineEvent } from '../vocabulary.ts';
import { csvCell, jsonEscaped } from './escape.ts';
import { iso, toJson } from './json.ts';

/** The JSON document of `timeline`. Source: design.md, section 8. */
export function timelineJson(inputs: readonly Input[], timelines: Iterable<PairTimeline>): string {
  return toJson({
    schema: 'steadypair/timeline/1',
    inputs,
    events: [...timelines].flatMap((t) => t.events.map(eventDocument)),
  });
}

/** One JSON object a line, an event each; some lines at a time. */
export function timelineJsonLines(timelines: Iterable<PairTimeline>): Iterable<string> {
  const instant = instantText();
  return inPieces(timelines, '', (event) => {
    const { time, earliest } = event;
    const document = { ...eventDocument(event), time: instant(time), earliest: instant(earliest) };
    return `${jsonEscaped(JSON.stringify(document))}\n`;
  });
}

/** One event a row, RFC 4180, some rows at a time; sources as `file:line` parted by spaces. Safe to open in a spreadsheet. */
export function timelineCsv(timelines: Iterable<PairTimeline>): Iterable<string> {
  const instant = instantText();
  const cell = knownCells();
  return inPieces(timelines, 'time,earliest,pair,half,signal,value,before,concluded,sources\r\n', (e) => {
    const [first, ...more] = e.sources;
    // One line of a file: what its name needs as a cell, all of it needs.
    const isPlain = more.length === 0 && cell(first.file) === first.file;
    const places = (): string => e.sources.map((s) => `${s.file}:${s.line}`).join(' ');
    const sources = isPlain ? `${first.file}:${first.line}` : csvCell(places());
    const said = `${cell(e.pair)},${cell(e.half)},${cell(e.signal)},${cell(e.value)},${cell(e.before)}`;
    return `${instant(e.time)},${instant(e.earliest)},${said},${e.concluded ? 'concluded' : ''},${sources}\r\n`;
  });
}

/** So many cells are known by their texts. */
const mostKnown = 4096;

/** Cells as `csvCell` gives them; those of texts that come again are made once. */
function knownCells(): (text: string | null) => string {
  const known = new Map<string, string>();
  return (text) => {
    if (text === null) return '';
    const cell = known.get(text) ?? csvCell(text);
    if (known.size < mostKnown) known.set(text, cell);
    return cell;
  };
}

/** How many lines are made at a time, so that a long text needs no memory of its own. */
const linesAtOnce = 512;

function* inPieces(
  timelines: Iterable<PairTimeline>,
  header: string,
  line: (event: TimelineEvent) => string,
): Generator<string> {
  let text = header;
  let lines = 0;
  for (const { events } of timelines) {
    for (const event of events) {
      text += line(event);
      lines += 1;
      if (lines % linesAtOnce > 0) continue;
      yield text;
      text = '';
    }
  }
  yield text;
}

const dayMs = 86_400_000;

/** Instants as `iso` gives them; the date is made once for the instants of one day that follow each other. */
function instantText(): (time: number) => string {
  let day = Number.NaN;
  let date = '';
  return (time) => {
    const from = Math.floor(time / dayMs) * dayMs;
    if (from !== day) date = iso(from).slice(0, -'00:00:00.000Z'.length);
    day = from;
    const clock = time - from;
    const [hours, minutes] = [Math.floor(clock / 3_600_000), Math.floor(clock / 60_000) % 60];
    const seconds = Math.floor(clock / 1000) % 60;
    return `${date}${twoDigits[hours]}:${twoDigits[minutes]}:${twoDigits[seconds]}.${threeDigits(clock % 1000)}Z`;
  };
}

/** Hours, minutes and seconds as a clock shows them. */
const twoDigits = Array.from({ length: 60 }, (_, value) => String(value).padStart(2, '0'));

function threeDigits(value: number): string {
  return value === 0 ? '000' : String(value).padStart(3, '0');
}

function eventDocument({
  time,
  earliest,
  pair,
  half,
  signal,
  value,
  before,
  concluded,
  sources,
}: TimelineEvent): {
  readonly time: number;
  readonly earliest: number;
} & Record<string, unknown> {
  return {
    time,
    earliest,
    pair,
    half,
    signal,
    value,
    before,
    concluded,
    // Each by its name: one that is still columns has no fields of its own.
    sources: sources.map(({ file, line, text, count, printed }) => ({ file, line, text, count, printed })),
  };
}
