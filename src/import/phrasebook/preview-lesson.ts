import type { SeenWording, SourceLine, Subject } from '../../vocabulary.ts';
import { InputError } from '../bytes/input-error.ts';
import { entryReader } from './entries.ts';
import { patternList } from './patterns.ts';
import { parsePhrasebook } from './phrasebook.ts';
import type { Phrasebook } from './phrasebook-rules.ts';
import { parameterNamed } from './plain-parameters.ts';
import { addressed, subjectOf } from './subjects.ts';
import { addLessons, type Lesson } from './teach-phrasebook.ts';
import { valueMeant } from './values.ts';

/** What a lesson would do. */
export interface LessonPreview {
  /** How many rows it would use that no rule knows now. */
  readonly rows: number;
  /** How many rows it fits, known or not; `null` where it is about files or stamps and not about wordings. */
  readonly fits: number | null;
  /** Where it fits rows, and a rule before it takes all of them. */
  readonly isBehind: boolean;
  /** What the first of the rows say then. */
  readonly lines: readonly { readonly at: SourceLine; readonly says: string }[];
  /** Why it is no rule: what is wrong and what to do. */
  readonly problem: { readonly what: string; readonly fix: string } | null;
}

const mostLines = 4;
const newRule = 'the new rule';
const nothing: LessonPreview = { rows: 0, fits: null, isBehind: false, lines: [], problem: null };

/** What each of some lessons would do, with the phrasebook and those that are rules as they are, in the order of the lessons. */
export function previewLessons(
  yaml: string | null,
  lessons: readonly Lesson[],
  wordings: readonly SeenWording[],
  layouts: readonly string[],
): readonly LessonPreview[] {
  const checked = lessons.map((lesson) => ({ lesson, ...checkedAlone(lesson, layouts) }));
  const good = checked.filter(({ problem }) => problem === null);
  const whole = parsePhrasebook(
    newRule,
    addLessons(
      newRule,
      yaml,
      good.map(({ lesson }) => lesson),
      layouts,
    ),
    layouts,
  );
  const takes = takers(
    good.map(({ lesson }) => lesson),
    whole,
    wordings,
  );
  return checked.map(({ lesson, alone, problem }) =>
    alone === null ? { ...nothing, problem } : previewOne(lesson, alone, whole, wordings, takes.get(lesson)),
  );
}

function checkedAlone(
  lesson: Lesson,
  layouts: readonly string[],
): Pick<LessonPreview, 'problem'> & { readonly alone: Phrasebook | null } {
  try {
    const text = addLessons(newRule, null, [lesson], layouts);
    return { alone: parsePhrasebook(newRule, text, layouts), problem: null };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { alone: null, problem: { what: error.what, fix: error.fix } };
  }
}

function previewOne(
  lesson: Lesson,
  alone: Phrasebook,
  whole: Phrasebook,
  wordings: readonly SeenWording[],
  taken: ReadonlySet<SeenWording> | undefined,
): LessonPreview {
  if (lesson.kind === 'file' || lesson.kind === 'time' || lesson.kind === 'columns') return nothing;
  // What it takes it fits: to look through all wordings for every rule would take minutes where both are many.
  const isTaking = taken !== undefined && taken.size > 0;
  const fits = isTaking ? [...taken] : wordings.filter(fittingOf(lesson, alone));
  const used = taken === undefined || isTaking ? fits : [];
  const sum = (some: readonly SeenWording[]): number => some.reduce((all, w) => all + w.count, 0);
  return {
    rows: sum(used.filter((w) => w.understood === null)),
    fits: sum(fits),
    isBehind: fits.length > 0 && used.length === 0,
    lines: used.slice(0, mostLines).map((w) => ({ at: w.first, says: saysOf(w, whole) })),
    problem: null,
  };
}

/** Of each lesson on messages the wordings that no rule before it takes. */
function takers(
  lessons: readonly Lesson[],
  whole: Phrasebook,
  wordings: readonly SeenWording[],
): ReadonlyMap<Lesson, ReadonlySet<SeenWording>> {
  const own = lessons.filter(({ kind }) => kind === 'message');
  const list = patternList(whole.messages.map(({ pattern }) => pattern));
  const before = whole.messages.length - own.length;
  const taken = new Map(own.map((lesson) => [lesson, new Set<SeenWording>()]));
  if (own.length === 0) return taken;
  for (const wording of wordings) {
    const first = wording.kind === 'message' ? list.first(wording.name) : null;
    const lesson = first === null ? undefined : own[first.index - before];
    if (lesson !== undefined) taken.get(lesson)?.add(wording);
  }
  return taken;
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
