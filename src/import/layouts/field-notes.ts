import type { Subject } from '../../vocabulary.ts';
import { isWeekday } from '../clock/calendar-words.ts';
import type { DateOrder, StampFailure } from '../clock/stamp.ts';
import { explain } from '../clock/time-reader.ts';
import { readStamp } from '../clock/timestamps.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { halfSaid } from '../phrasebook/spoken-subjects.ts';
import { subjectOf } from '../phrasebook/subjects.ts';
import type { TextImporter } from './importer.ts';

/** `09:14`, `9.14`, `9h14`; `14.03.26` alone on a line is a date. */
const clockFirst = /^\s*\d{1,2}(?:[:hH]\d{2}|\.\d{2}(?!\.\d{2}\s*:?$))(?![\d])/;
/** What a person writes goes on in words; the row of a table goes on with its delimiter. */
const clockAndWords = /^\s*\d{1,2}[:.hH]\d{2}(?:[:.]\d{2})?\s*(?:[-–]\s*)?[\p{L}"'(«]/u;
const pairHeading = /^(?:[Pp]air\s+([A-Za-z][A-Za-z0-9_]*)|([A-Z][A-Z0-9_]*))\s*:?$/;
/** A name with a figure in it, or followed by a half: `RO1`, `INTAKE-B`. `LED` is no pair. */
const pairWord = /^(?:[A-Z]+[0-9]+|[A-Z][A-Z0-9_]*[-/](?:[A-Z]|[0-9]))$/;

/** Fields, addresses, process numbers and versions of protocols: no person writes them with a clock, line after line. */
const byProgram = /\w=\S|\S@\S|\[\d+\]|<\S*>|:\/\/|\w\/\d+\.\d|\b\d{1,3}(?:\.\d{1,3}){3}\b/;
/** Nobody writes the date and the seconds on every line by hand. */
const stampOfProgram = /^\W{0,3}\d{1,4}[-./]\d{1,2}[-./]\d{1,4}[T ,]+\d{1,2}:\d{2}:\d{2}/;
/** Words of the work on a pair, common practice, no source; a site's own are in its phrasebook. */
const work =
  /\b(?:standby|stby|partner|slot|half|halves|light|led|modules?|controllers?|cabinet|firmware|redundan\w+|sync\w*|(?:re)?flash\w*|switch(?:ed)?[ -]?over|pulled|fitted|re-?seated|swap\w*)\b/i;

function isOfWork(text: string, phrasebook: Phrasebook): boolean {
  return work.test(text) || phrasebook.notes().some(({ pattern }) => pattern.match(text) !== null);
}

/** What a technician wrote: a clock and words on a line; a line with a date or a pair sets it for those that follow. */
export const fieldNotes: TextImporter = {
  id: 'field-notes',
  title: 'field notes',
  summary: 'what a technician wrote: 09:14 pulled standby from slot B',
  ruleKeys: ['record'],
  shape: 'text',
  recognise(head, phrasebook) {
    const timed = head.lines
      .map((line) => line.replace(date, ''))
      .filter((line) => clockAndWords.test(line))
      .map((line) => line.replace(clockFirst, '').trim());
    if (timed.length * 3 < head.lines.length || timed.length === 0)
      return { fits: false, because: 'too few lines begin with a clock' };
    if (head.lines.filter((line) => stampOfProgram.test(line)).length * 2 > head.lines.length)
      return { fits: false, because: 'its lines have a date and seconds each, as a program writes them' };
    if (timed.filter((text) => byProgram.test(text)).length * 2 > timed.length)
      return { fits: false, because: 'its lines were written by a program' };
    return timed.filter((text) => isOfWork(text, phrasebook)).length * 5 >= timed.length
      ? { fits: true, because: 'its lines begin with a clock, followed by words' }
      : { fits: false, because: 'too few lines describe work on a pair' };
  },
  dateText: () => (row) => row.text(),
  open(head, phrasebook, times) {
    const of = head.rule?.of?.subject;
    let pair: string | null = of?.pair ?? null;
    return (row, sink) => {
      const text = row.cell(0).trim();
      if (text === '') return sink.ignore();
      const date = dateIn(text, times.order);
      const named = pairIn(date === null || typeof date === 'string' ? text : date.rest, phrasebook);
      pair = named?.pair ?? pair;
      if (typeof date === 'string') {
        const { what, fix, setting } = explain(text, date);
        return sink.reject(what, fix, setting);
      }
      if (date !== null) times.setDay(date.day);
      const body = date?.rest ?? text;
      if (!clockFirst.test(body)) {
        // A line without a clock heads those that follow; it is no entry of its own.
        return date !== null || named !== null || /^[#\p{L}]/u.test(text)
          ? sink.ignore()
          : sink.reject('The line has no clock.', 'Begin it with hh:mm.');
      }
      const at = times.read(withColons(body));
      if (typeof at !== 'number') {
        const { what, fix, setting } = explain(text, at);
        return sink.reject(what, fix, setting);
      }
      if (pair === null) return sink.reject('The line names no pair.', 'Name the pair on a line before it.');
      const said = body.slice(times.end()).trim();
      const half = pair === of?.pair && halfSaid(said) === null ? of.half : null;
      sink.note(at, pair, named?.half ?? half, said);
    };
  },
};

/** The pair that a line names, with its half: a heading of its own, or a word that looks like one to a unit pattern. */
function pairIn(text: string, phrasebook: Phrasebook): Subject | null {
  const heading = pairHeading.exec(text);
  const name = heading?.[1] ?? heading?.[2];
  const words = name === undefined ? wordsOf(text).filter((word) => pairWord.test(word)) : [name];
  for (const unit of words) {
    const subject = subjectOf(phrasebook, { unit, half: '', role: '' });
    if (subject !== null) return subject;
  }
  return null;
}

/** A full stop ends a word before a blank only: `HTTP/1.1` is one. */
function wordsOf(text: string): readonly string[] {
  return text.split(/[\s,;:()]+|(?<!\.)\.+(?=\s|$)/);
}

/** A date with its year, in figures or with the name of its month in any of the languages that stamps are read in. */
const date = new RegExp(
  [
    String.raw`\b\d{4}-\d{2}-\d{2}\b`,
    String.raw`\b\d{1,2}(?:[/-]|\. ?)\d{1,2}(?:[/-]|\. ?)\d{4}\b`,
    String.raw`\b\d{1,2}(?:st|nd|rd|th|er|[.º°])?[ -]?(?:de |of )?\p{L}{3,10}\.?,?[ -](?:de |of )?\d{4}\b`,
    String.raw`\b\p{L}{3,10}\.? \d{1,2}(?:st|nd|rd|th)?,? \d{4}\b`,
  ].join('|'),
  'u',
);
/** A date with a year of two digits is one only at the end of a heading: `14.03.26`, `RO1 14/3/26`. */
const shortDate = /(?:^|\s)(\d{2}\.\d{2}\.\d{2}|\d{1,2}[/-]\d{1,2}[/-]\d{2})\s*:?$/;

/** `9.14` and `9.14.05` as the reader of stamps takes a clock that stands alone. */
function withColons(text: string): string {
  return text.replace(/^(\d{1,2})\.(\d{2})(?:\.(\d{2}))?(?!\d)/, (_, hour, minute, second) =>
    [hour, minute, ...(second === undefined ? [] : [second])].join(':'),
  );
}

interface Dated {
  /** Milliseconds UTC of its midnight. */
  readonly day: number;
  /** The line without its date, and without what joins it to a pair in a heading. */
  readonly rest: string;
}

/** The date of a line and of those that follow. One in the midst of what was done at a clock is not theirs. */
function dateIn(text: string, order: DateOrder | undefined): Dated | StampFailure | null {
  const found = date.exec(text) ?? (clockFirst.test(text) ? null : shortDate.exec(text));
  if (found === null) return null;
  const printed = found[1] ?? found[0];
  const at = found.index + found[0].indexOf(printed);
  const before = text.slice(0, at);
  if (clockFirst.test(text) && !/^\d{1,2}[:.hH]\d{2}(?:[:.]\d{2})?\s*$/.test(before)) return null;
  const stamp = readStamp(printed, { order, year: undefined, day: undefined });
  // "2 modules 4711" is none.
  if (stamp === 'no-date') return null;
  if (typeof stamp === 'string') return stamp;
  const after = text.slice(at + printed.length);
  const isHeading = !clockFirst.test(`${before}${after}`.trim());
  return { day: stamp.clock, rest: isHeading ? heading(before, after) : `${before}${after}`.trim() };
}

/** What a heading says besides its date, without the name of the day and marks at its ends. */
function heading(before: string, after: string): string {
  return `${before} ${after}`
    .split(/[\s,;:()]+|[-–]+(?=\s|$)/)
    .filter((word) => word !== '' && !isWeekday(word.replace(/\.$/, '')))
    .join(' ');
}
