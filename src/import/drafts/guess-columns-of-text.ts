import { isSeverity } from '../phrasebook/severity-words.ts';
import { roleNamed } from '../phrasebook/subjects.ts';
import { escapedText, generalKey, partsOf } from './general-wording.ts';

/** What stands in one place of every line: a pattern with one group, and what each line has there. */
export interface TextColumn {
  readonly kind: 'severity' | 'role' | 'number' | 'name';
  /** How its place is marked. */
  readonly mark: 'bracket' | 'bar' | 'colon' | 'word';
  /** What stands before it. */
  readonly lead: string;
  /** The column itself, with one unnamed group. */
  readonly pattern: string;
  readonly values: readonly string[];
}

interface Taken {
  readonly column: TextColumn;
  readonly rests: readonly string[];
}

/** One way in which a column can be marked. */
interface Marked {
  readonly mark: TextColumn['mark'];
  readonly form: RegExp;
  readonly pattern: string;
}

const marks: readonly Marked[] = [
  { mark: 'bracket', form: /^\[([^\]]{0,60})\]/, pattern: '\\[([^\\]]*)\\]' },
  { mark: 'bracket', form: /^\(([^)]{0,60})\)/, pattern: '\\(([^)]*)\\)' },
  { mark: 'bracket', form: /^<([^>]{0,60})>/, pattern: '<([^>]*)>' },
  { mark: 'bracket', form: /^\{([^}]{0,60})\}/, pattern: '\\{([^}]*)\\}' },
  { mark: 'bracket', form: /^"([^"]{0,60})"(?=\s|$)/, pattern: '"([^"]*)"' },
  { mark: 'bar', form: /^([^|\s][^|]{0,60}?)\s*(?=\|)/, pattern: '([^|]*?)\\s*' },
  { mark: 'bar', form: /^([^;\s]{1,60})\s*(?=;)/, pattern: '([^;]*?)\\s*' },
  { mark: 'bar', form: /^([^,\s]{1,60})\s*(?=,)/, pattern: '([^,]*?)\\s*' },
  { mark: 'bar', form: /^([^\t]{1,60})(?=\t)/, pattern: '([^\\t]*)' },
  { mark: 'colon', form: /^([\w./@-]+(?:\[\d+\])?):(?=\s|$)/, pattern: '([^\\s:]+):' },
  { mark: 'word', form: /^(\S+)(?=\s|$)/, pattern: '(\\S+)' },
];

const mostly = 0.9;
/** With fewer lines nothing is said by how values vary. */
const fewLines = 5;
const mostRepeated = 0.2;

/** The column that the texts begin with, the first behind a stamp or a later one; `null` where the message begins. */
export function takeColumn(texts: readonly string[], isFirst: boolean): Taken | null {
  const leads = texts.map(leadOf);
  const bodies = texts.map((text, i) => text.slice(leads[i]?.length ?? 0));
  if (bodies.filter((body) => body !== '').length < texts.length * mostly) return null;
  for (const { mark, form, pattern } of marks) {
    const found = bodies.map((body) => form.exec(body));
    if (found.filter((f) => f !== null).length < bodies.length * mostly) continue;
    const values = found.map((f) => f?.[1] ?? '');
    const rests = found.map((f, i) => (bodies[i] ?? '').slice(f?.[0].length ?? 0));
    const kind = kindOf(values, rests, { mark, isFirst });
    if (kind !== null) return { column: { kind, mark, lead: leadPattern(leads), pattern, values }, rests };
  }
  return null;
}

function leadOf(text: string): string {
  return /^[\s,;:|>*-]*/.exec(text)?.[0] ?? '';
}

/** The pattern of what stands before the message. */
export function messageLead(texts: readonly string[]): string {
  return leadPattern(texts.map(leadOf));
}

function leadPattern(leads: readonly string[]): string {
  const shapes = new Set(leads.map((lead) => lead.replace(/\s+/g, ' ')));
  const [only = ''] = shapes;
  return shapes.size === 1 ? escapedText(only).replaceAll(' ', '\\s+') : '[\\s,;:|>*-]*';
}

/** What the values of a place are; `null` where they are the startning of the message. */
function kindOf(
  values: readonly string[],
  rests: readonly string[],
  { mark, isFirst }: Pick<TextColumn, 'mark'> & { readonly isFirst: boolean },
): TextColumn['kind'] | null {
  const share = (holds: (value: string) => boolean): number => values.filter(holds).length / values.length;
  if (share((value) => isSeverity(value.replace(/[:,;]$/, '').trim())) >= mostly) return 'severity';
  if (share((value) => /^(?:0x)?[0-9a-f]*\d[0-9a-f]*$/i.test(value.trim())) >= mostly) return 'number';
  const different = new Set(values.map((value) => value.replace(/\[\d+\]$/, ''))).size;
  // One letter for it is as common.
  if (different <= 6 && share((value) => /^[DEFINTVW]$/.test(value.trim())) >= mostly) return 'severity';
  if (share((value) => roleNamed(value) !== null) >= mostly)
    return mark === 'word' && !isShared(values, rests) ? null : 'role';
  if (different > Math.max(2, values.length * mostRepeated)) return mark === 'bar' ? 'name' : null;
  if (mark === 'bar') return 'name';
  if (values.some((value) => /[.!]$/.test(value))) return null;
  if (mark === 'colon' && share((value) => /\[\d+\]$/.test(value)) >= mostly) return 'name';
  const isMarked = share((value) => /[\d_/.@-]|.\p{Lu}|^\p{Lu}$/u.test(value)) >= mostly;
  if (values.length < fewLines) return isMarked && mark !== 'colon' ? 'name' : null;
  // A word that all lines have there may be the host, or what all of them are about: then little else is said.
  if (different === 1)
    return isMarked || mark === 'bracket' || (isFirst && wordings(rests) >= fewLines) ? 'name' : null;
  return isShared(values, rests) || (isMarked && mark === 'bracket') ? 'name' : null;
}

function wordings(rests: readonly string[]): number {
  return new Set(rests.map((rest) => generalKey(partsOf(rest)))).size;
}

/** Whether the same is said beside different values: then the value is about who says it, not what. */
function isShared(values: readonly string[], rests: readonly string[]): boolean {
  const beside = new Map<string, Set<string>>();
  const keys = rests.map((rest) => generalKey(partsOf(rest)));
  for (const [i, key] of keys.entries()) {
    const known = beside.get(key) ?? new Set();
    beside.set(key, known.add(values[i] ?? ''));
  }
  const shared = keys.filter((key) => (beside.get(key)?.size ?? 0) > 1).length;
  return shared >= keys.length * mostRepeated;
}
