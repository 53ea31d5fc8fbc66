import type { Importer } from './importer.ts';
import { explain, type TimeReader } from './time-reader.ts';
import { readStamp } from './timestamps.ts';

const clockFirst = /^\s*\d{1,2}[:.]\d{2}\b/;
const pairHeading = /^\s*(?:pair\s+)?([A-Z][A-Z0-9_]*)\s*:?\s*$/i;

/** What a technician wrote: a clock and words on a line; a line with a date or a pair sets it for those that follow. */
export const fieldNotes: Importer = {
  id: 'field-notes',
  title: 'Field notes: a clock and what was done',
  shape: 'text',
  recognise(head) {
    const timed = head.lines.filter((line) => clockFirst.test(line)).length;
    return timed * 3 >= head.lines.length && timed > 0
      ? { fits: true, because: 'its lines begin with a clock and go on in words' }
      : { fits: false, because: 'too few lines begin with a clock' };
  },
  open(_head, phrasebook, times) {
    let pair: string | null = null;
    return (row, sink) => {
      const text = row.text().trim();
      if (text === '') return sink.ignore();
      const named = pairIn(text, phrasebook.units);
      const date = setDate(text, times, phrasebook.order);
      if (!clockFirst.test(text)) {
        pair = named ?? pair;
        // A line without a clock heads those that follow; it is no entry of its own.
        return date || named !== null || /^[#\p{L}]/u.test(text)
          ? sink.ignore()
          : sink.reject('The line has no clock.', 'Begin it with hh:mm.');
      }
      const at = times.read(text.replace(/^(\d{1,2})\.(\d{2})\b/, '$1:$2'));
      if (typeof at !== 'number') {
        const { what, fix } = explain(text, at);
        return sink.reject(what, fix);
      }
      const about = named ?? pair;
      if (about === null)
        return sink.reject('The line is about no pair that is named.', 'Name the pair on a line before it.');
      sink.note(at, about, text.slice(times.end()).trim());
    };
  },
};

/** The pair that a line names: a heading of its own, or a word that a unit pattern knows and that has a figure in it. */
function pairIn(
  text: string,
  units: readonly { readonly pattern: { match(text: string): Readonly<Record<string, string>> | null } }[],
): string | null {
  const heading = pairHeading.exec(text)?.[1];
  const words =
    heading === undefined
      ? text
          .split(/[\s,;:()]+/)
          .filter((word) => /^[A-Z][A-Z0-9_]*\d?(?:[-/][A-Z0-9]+)?$/.test(word) && word.length > 2)
      : [heading];
  for (const word of words) {
    for (const { pattern } of units) {
      const pair = pattern.match(word)?.pair;
      if (pair !== undefined) return pair;
    }
  }
  return null;
}

/** A date anywhere in the line is the date of the lines that follow. */
function setDate(text: string, times: TimeReader, order: 'day-first' | 'month-first' | undefined): boolean {
  const found =
    /\b(?:\d{4}-\d{2}-\d{2}|\d{1,2}[./-]\d{1,2}[./-]\d{4}|\d{1,2}[ -][A-Z][a-z]{2,8}[ -]\d{4})\b/.exec(
      text,
    )?.[0];
  if (found === undefined) return false;
  const stamp = readStamp(found, { order, year: undefined, day: undefined });
  if (typeof stamp === 'string') return false;
  times.setDay(stamp.clock);
  return true;
}
