/** What stands around a name (brackets), its beginning up to the last mark, that mark, and what stands behind it. */
const parts = /^([^\p{L}\d]*)(?:(.*[\p{L}\d])([^\p{L}\d]+))?([\p{L}\d]+)([^\p{L}\d]*)$/u;

/** A unit's name taken apart: the pair is what stands before the last mark, the half what stands behind it. */
export interface UnitParts {
  readonly pair: string;
  readonly half: string;
  /** Fits all units of that pair. */
  readonly pattern: string;
}

/** The pair and the half in a name; `null` where it has no mark that could part them. */
export function halfIn(name: string): UnitParts | null {
  const [, before = '', pair = '', mark = '', half = '', after = ''] = parts.exec(name) ?? [];
  if (pair === '') return null;
  const own = `(?<pair>${literally(pair)})${literally(mark)}(?<half>[\\pL\\d]+)`;
  return { pair, half, pattern: `^${literally(before)}${own}${literally(after)}$` };
}

/** A pattern for a name that is a pair's as a whole, without the brackets around it. */
export function pairPattern(name: string): string {
  const [, before = '', core = name, after = ''] =
    /^([^\p{L}\d]*)(.*[\p{L}\d])([^\p{L}\d]*)$/u.exec(name) ?? [];
  return `^${literally(before)}(?<pair>${literally(core)})${literally(after)}$`;
}

/** A text that stands for itself in a pattern. */
export function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
