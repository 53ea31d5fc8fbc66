import type { SeenWording, SourceLine, Subject } from '../../vocabulary.ts';
import { entryReader } from './entries.ts';
import { parsePhrasebook } from './phrasebook.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import { parameterNamed } from './plain-parameters.ts';
import { addressed, subjectOf } from './subjects.ts';
import { addLesson, type Lesson } from './teach-phrasebook.ts';
import { valueMeant } from './values.ts';

/** What a lesson would do: how many rows that no rule knows it would use, and what the first of all rows that it fits say. */
export interface LessonPreview {
  readonly rows: number;
  readonly lines: readonly { readonly at: SourceLine; readonly says: string }[];
}

const mostLines = 4;

/**
 * What the last of some lessons would do, with the phrasebook and the other lessons as they are. Throws InputError if one
 * does not fit.
 */
export function previewLessons(
  yaml: string | null,
  lessons: readonly Lesson[],
  wordings: readonly SeenWording[],
  layouts: readonly string[],
): LessonPreview {
  const file = 'the new rule';
  const last = lessons.at(-1);
  if (last === undefined) return { rows: 0, lines: [] };
  const text = lessons.reduce((book, lesson) => addLesson(file, book, lesson, layouts), yaml ?? '');
  const whole = parsePhrasebook(file, text, layouts);
  const fits = fittingOf(last, parsePhrasebook(file, addLesson(file, null, last, layouts), layouts));
  const found = wordings.filter(fits);
  return {
    rows: found.reduce((sum, w) => sum + (w.understood === null ? w.count : 0), 0),
    lines: found.slice(0, mostLines).map((w) => ({ at: w.first, says: saysOf(w, whole) })),
  };
}

/** Whether a lesson, alone in a phrasebook, is about a wording. */
function fittingOf(lesson: Lesson, alone: Phrasebook): (wording: SeenWording) => boolean {
  switch (lesson.kind) {
    case 'message':
      return ({ kind, name }) => kind === 'message' && alone.messages[0]?.pattern.match(name) != null;
    case 'ignore':
      return ({ kind, name, value }) => {
        const text = kind === 'message' ? name : kind === 'value' ? `${name} = ${value}` : `${kind} ${name}`;
        return alone.ignore.first(text) === 0;
      };
    case 'unit':
      return ({ kind, name }) => kind === 'unit' && alone.units[0]?.pattern.match(name) != null;
    case 'parameter':
      return ({ kind, name }) => kind === 'parameter' && name === lesson.name;
    case 'value':
      return ({ kind, name, value }) => kind === 'value' && name === lesson.name && value === lesson.text;
    case 'file':
    case 'time':
    case 'columns':
      return () => false;
  }
}

/** What the timeline will say of a wording: `half A of RO1: light steady`. */
function saysOf({ kind, name, value, unit }: SeenWording, phrasebook: Phrasebook): string {
  const about = kind === 'unit' ? name : unit;
  const subject = subjectOf(phrasebook, { unit: about, half: '', role: '' });
  if (kind === 'unit') return subject === null ? 'no pair' : saySubject(subject);
  const unknown: Subject = { pair: `"${unit}", no pair yet`, half: null, role: null };
  if (kind === 'message') {
    const found = entryReader(phrasebook).read(subject ?? { ...unknown, half: '?' }, name);
    if (found === 'ignored') return 'nothing: it is ignored';
    if (!Array.isArray(found)) return 'not recognised: no half is named';
    return found
      .map((one) => {
        const said = subject === null ? unknown : one.subject;
        return `${saySubject(said)}: ${one.signal}${one.value === null ? '' : ` ${one.value}`}`;
      })
      .join('; ');
  }
  const rule = parameterNamed(phrasebook, name);
  if (kind === 'parameter') return rule === undefined ? 'not recognised' : rule.signal;
  const meant = rule === undefined ? undefined : valueMeant(rule.signal, rule.values, value ?? '');
  if (rule === undefined || meant === undefined) return 'not recognised';
  const said = subject === null ? unknown : addressed(subject, rule.signal, rule.subject);
  return said === null ? 'not recognised: no half is named' : `${saySubject(said)}: ${rule.signal} ${meant}`;
}

function saySubject({ pair, half, role, isOther }: Subject): string {
  // Which one that is the halves of all files tell.
  if (half !== null && isOther === true) return `the half of ${pair} that is not ${half}`;
  if (half !== null) return `half ${half} of ${pair}`;
  return role === null ? `pair ${pair}` : `the ${role} half of ${pair}`;
}
