import type { Subject } from '../../vocabulary.ts';
import type { DateOrder, StampFailure } from '../clock/stamp.ts';
import { explain } from '../clock/time-reader.ts';
import { readStamp } from '../clock/timestamps.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { subjectOf } from '../phrasebook/subjects.ts';
import type { TextImporter } from './importer.ts';

const clockFirst = /^\s*\d{1,2}[:.]\d{2}\b/;
/** What a person writes goes on in words; the row of a table goes on with its delimiter. */
const clockAndWords = /^\s*\d{1,2}[:.]\d{2}(?::\d{2})?\s*(?:[-–]\s*)?[\p{L}"'(«]/u;
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
      ? { fits: true, because: 'its lines begin with a clock and go on in words' }
      : { fits: false, because: 'too few lines tell of work on a pair' };
  },
  open(_head, phrasebook, times) {
    let pair: string | null = null;
    return (row, sink) => {
      const text = row.text().trim();
      if (text === '') return sink.ignore();
      const named = pairIn(text, phrasebook);
      pair = named?.pair ?? pair;
      const date = dateIn(text, times.order);
      if (typeof date === 'string') {
        const { what, fix } = explain(text, date);
        return sink.reject(what, fix);
      }
      if (date !== null) times.setDay(date.day);
      const body = date?.rest ?? text;
      if (!clockFirst.test(body)) {
        // A line without a clock heads those that follow; it is no entry of its own.
        return date !== null || named !== null || /^[#\p{L}]/u.test(text)
          ? sink.ignore()
          : sink.reject('The line has no clock.', 'Begin it with hh:mm.');
      }
      const at = times.read(body.replace(/^(\d{1,2})\.(\d{2})\b/, '$1:$2'));
      if (typeof at !== 'number') {
        const { what, fix } = explain(text, at);
        return sink.reject(what, fix);
      }
      if (pair === null)
        return sink.reject('The line is about no pair that is named.', 'Name the pair on a line before it.');
      sink.note(at, pair, named?.half ?? null, body.slice(times.end()).trim());
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

const date = /\b(?:\d{4}-\d{2}-\d{2}|\d{1,2}[./-]\d{1,2}[./-]\d{4}|\d{1,2}[ -][A-Z][a-z]{2,8}[ -]\d{4})\b/;

interface Dated {
  /** Milliseconds UTC of its midnight. */
  readonly day: number;
  /** The line without its date. */
  readonly rest: string;
}

/** The date of a line and of those that follow. One in the midst of what was done at a clock is not theirs. */
function dateIn(text: string, order: DateOrder | undefined): Dated | StampFailure | null {
  const found = date.exec(text);
  if (found === null) return null;
  const before = text.slice(0, found.index);
  if (clockFirst.test(text) && !/^\d{1,2}[:.]\d{2}(?::\d{2})?\s*$/.test(before)) return null;
  const stamp = readStamp(found[0], { order, year: undefined, day: undefined });
  if (typeof stamp === 'string') return stamp;
  return { day: stamp.clock, rest: `${before}${text.slice(found.index + found[0].length)}`.trim() };
}
