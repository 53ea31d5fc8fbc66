import type { TimeReader } from '../clock/time-reader.ts';
import { isPlantName, isProgramName } from '../phrasebook/pair-names.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { isSeverity, withoutSeverity } from '../phrasebook/severity-words.ts';
import { unitMeant } from '../phrasebook/subjects.ts';
import type { LineParts } from './line-fields.ts';
import type { LineFormat } from './line-format.ts';

/** What follows the stamp of a line. */
interface Stamped {
  readonly at: number;
  readonly rest: string;
}

const nothing: ReadonlyMap<string, string> = new Map();
const opening = /^\s*[[("]/;
const closing = /^\s*[\])"]/;
const between = /^[\s,;:|]+/;
/** A field of a line: in brackets, or a word with the mark that ends it. */
const field = /^(?:\[([^\]]*)\]|([^\s|]+?))[:,;]?(?:\s*\||\s+|$)\s*/;
/** The program and the process that write: `redund[812]:`. */
const program = /^[\w./-]{1,48}\[\d+\]:\s+/;
const mostScanned = 300;
const mostFields = 5;

/** The stamp that a line begins with, in brackets or not; a severity may stand before it or behind it. */
function stampedAt(line: string, times: TimeReader): Stamped | null {
  const bare = withoutSeverity(line);
  const isOpen = opening.test(bare);
  const text = isOpen ? bare.replace(opening, '') : bare;
  const at = times.read(text);
  if (typeof at !== 'number') return null;
  const after = text.slice(times.end());
  return { at, rest: withoutSeverity(withoutMarks(isOpen ? after.replace(closing, '') : after)) };
}

/** What stands behind the marks between two fields; a single blank, as most lines have it, without a pattern. */
function withoutMarks(text: string): string {
  return text.charCodeAt(0) === 32 && isLetterOrDigit(text.charCodeAt(1))
    ? text.slice(1)
    : text.replace(between, '');
}

function isLetterOrDigit(code: number): boolean {
  return (code >= 48 && code <= 57) || ((code | 32) >= 97 && (code | 32) <= 122);
}

/** A field and what comes after it; `null` where there is none. */
function fieldOf(rest: string): { readonly text: string; readonly after: number } | null {
  const end = plainWordEnd(rest);
  if (end > 0) return { text: rest.slice(0, end), after: end + 1 };
  const found = field.exec(rest.slice(0, mostScanned));
  const text = found?.[1] ?? found?.[2];
  return found === null || text === undefined ? null : { text: text.trim(), after: found[0].length };
}

/** Where a word of letters, figures, `-`, `.`, `/` and `_` ends that one blank parts from the next, as in most lines; else 0. */
function plainWordEnd(rest: string): number {
  let end = 0;
  for (let code = rest.charCodeAt(0); isLetterOrDigit(code) || isJoined(code); code = rest.charCodeAt(end))
    end += 1;
  const isPlain = rest.charCodeAt(end) === 32 && isLetterOrDigit(rest.charCodeAt(end + 1));
  return isPlain && end < mostScanned ? end : 0;
}

function isJoined(code: number): boolean {
  return (code >= 45 && code <= 47) || code === 95;
}

function messageOf(rest: string): string {
  const bare = isLetterOrDigit(rest.charCodeAt(0)) ? rest : rest.replace(/^[|:;,-]\s+/, '');
  return bare.includes('[') ? bare.replace(program, '') : bare;
}

/**
 * A stamp and then fields, of which the one at a place, counted from 0, names the unit; what stands before it (severity,
 * thread, process) is passed over.
 */
function unitAt(place: number, phrasebook: Phrasebook): LineFormat {
  return {
    id: `unit-at-${place}`,
    title: 'a leading timestamp, a unit and a message',
    speaks: ({ unit }) => isUnitByForm(phrasebook, unit),
    take(line, times) {
      const stamped = stampedAt(line, times);
      if (stamped === null) return null;
      let rest = stamped.rest;
      for (let passed = 0; passed < place; passed += 1) {
        const found = fieldOf(rest);
        if (found === null) return null;
        rest = rest.slice(found.after);
      }
      return partsOf(stamped.at, rest);
    },
  };
}

function partsOf(at: number, rest: string): LineParts | null {
  const found = fieldOf(rest);
  if (found === null || found.text === '') return null;
  return { stamp: at, unit: found.text, message: messageOf(rest.slice(found.after)), fields: nothing };
}

/** Formats of the first fields, each with the unit in another: they speak where the unit is one by its form. */
export function unitPlaces(phrasebook: Phrasebook): readonly LineFormat[] {
  return Array.from({ length: mostFields }, (_, place) => unitAt(place, phrasebook));
}

function isUnitByForm(phrasebook: Phrasebook, text: string): boolean {
  const meant = unitMeant(phrasebook, { unit: text, half: '', role: '' });
  return meant !== null && (meant.by !== 'word' || isPlantName(meant.subject.pair));
}

/** A timestamp, a unit (in brackets, or the first word) and a message. */
export const leadingStamp: LineFormat = {
  id: 'leading-stamp',
  title: 'a leading timestamp, a unit and a message',
  // "09:14 pulled the standby" begins with a word, not with a unit: a unit has a figure, a mark or more than one capital.
  speaks: ({ unit }) => /[\d_:/.-]|^\p{Lu}$|.\p{Lu}/u.test(unit) && !isOfProgram(unit),
  take(line, times) {
    const stamped = stampedAt(line, times);
    return stamped === null ? null : partsOf(stamped.at, stamped.rest);
  },
};

/** Numbers of processes, threads and addresses. */
function isOfProgram(text: string): boolean {
  return /^(?:0x)?[\d.:]+$/i.test(text) || text.split(/[-/]/).some(isProgramName);
}

/** A timestamp and words that begin with no unit: of which unit the file is, only a phrasebook can say; then some may say it all the same. */
export const stampAndWords: LineFormat = {
  id: 'stamp-and-words',
  title: 'a leading timestamp and a message, without a unit',
  take(line, times, { isUnit }) {
    const stamped = stampedAt(line, times);
    if (stamped === null || isTableRow(line, times)) return null;
    let { rest } = stamped;
    let found = fieldOf(rest);
    for (
      ;
      found !== null && isUnit?.(found.text) !== true && isPassedOver(rest, found.text);
      found = fieldOf(rest)
    )
      rest = rest.slice(found.after);
    if (found !== null && isUnit?.(found.text) === true) return partsOf(stamped.at, rest);
    return { stamp: stamped.at, unit: '', message: messageOf(rest), fields: nothing };
  },
};

/** What goes on with a delimiter is the row of a table, and not what words are said. */
function isTableRow(line: string, times: TimeReader): boolean {
  return /^\s*[,;]/.test(withoutSeverity(line).slice(times.end()));
}

/** Threads in brackets, numbers of processes and severities before a message. */
function isPassedOver(rest: string, text: string): boolean {
  return text !== '' && (/^[[(<]/.test(rest) || isSeverity(text) || /^\d+$/.test(text));
}
