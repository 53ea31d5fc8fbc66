import { detached } from '../bytes/decode.ts';
import { isPlantName } from '../phrasebook/pair-names.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { unitMeant } from '../phrasebook/subjects.ts';

/** A name of a historian, taken apart: `RO1-A.Role` is the role of the unit `RO1-A`. */
export interface Tag {
  readonly unit: string;
  readonly parameter: string;
}

/** Marks between the parts of a tag. A `-` may belong to a unit, and an `_` to either. */
const marks = /[.:/\\|>!]|\s+|_/g;
/** What is longer is no tag: each of its marks would be tried. Chosen here. */
const longestTag = 256;

/**
 * A tag, or the header of a column, as a unit and a parameter that are both known without a phrasebook or by its rules; `null`
 * for any other text. What stands before the unit (server, site, area) is passed over.
 */
export function tagNamed(phrasebook: Phrasebook, text: string): Tag | null {
  const trimmed = text.trim();
  if (trimmed.length > longestTag) return null;
  for (const mark of trimmed.matchAll(marks)) {
    const unit = unitAtEnd(phrasebook, trimmed.slice(0, mark.index));
    const parameter = trimmed.slice(mark.index + mark[0].length).trim();
    if (unit !== null && parameterNamed(phrasebook, parameter) !== undefined) return { unit, parameter };
  }
  return null;
}

/** Whether a text is such a tag. */
export function isTag(phrasebook: Phrasebook, text: string): boolean {
  return tagNamed(phrasebook, text) !== null;
}

/** The unit that a text is, or that its last part is. */
function unitAtEnd(phrasebook: Phrasebook, text: string): string | null {
  const whole = text.trim();
  const last = whole.split(/[.:\\|>!\s]/).at(-1) ?? '';
  const parts = last.split('/');
  const candidates = [whole, last, parts.slice(-2).join('/'), parts.at(-1) ?? ''];
  return candidates.find((candidate) => isUnit(phrasebook, candidate)) ?? null;
}

function isUnit(phrasebook: Phrasebook, text: string): boolean {
  const meant = unitMeant(phrasebook, { unit: text, half: '', role: '' });
  return meant !== null && (meant.by !== 'word' || isPlantName(meant.subject.pair));
}

/** The unit and the parameter of a tag; of one that is not known what stands before its last mark, so that it is listed whole. */
export function tagReader(phrasebook: Phrasebook): (text: string) => Tag {
  const known = new Map<string, Tag>();
  return (text) => {
    const seen = known.get(text);
    if (seen !== undefined) return seen;
    const made = tagNamed(phrasebook, text) ?? splitTag(text);
    // So many names are no tags of one file: the rest is taken apart each time.
    if (known.size < mostTags) known.set(detached(text), made);
    return made;
  };
}

const mostTags = 10_000;

function splitTag(text: string): Tag {
  const at = Math.max(...['.', '/', '\\', ':', '|'].map((mark) => text.lastIndexOf(mark)));
  return at <= 0
    ? { unit: text, parameter: text }
    : { unit: text.slice(0, at), parameter: text.slice(at + 1) };
}
