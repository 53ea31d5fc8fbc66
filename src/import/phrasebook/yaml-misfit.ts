import { chooseOneOf } from './nearest-word.ts';

/** What is wrong with a YAML text of a given shape, and what to do about it. */
export interface Misfit {
  readonly what: string;
  readonly fix: string;
}

/** What the check of a shape says of the first thing that does not fit. */
export interface Issue {
  readonly path?: readonly { readonly key: unknown }[] | undefined;
  readonly input: unknown;
  readonly expected: string | null;
  readonly received: string;
  readonly message: string;
}

/** Says of the first thing that does not fit its place, what was expected, and the nearest right word. */
export function misfitOf(schema: unknown, issues: readonly [Issue, ...Issue[]], hint: string): Misfit {
  const issue = worst(issues);
  const path = pathOf(issue);
  const place = dotted(path);
  if (issue.expected === 'never') {
    const keys = keysOf(schemaAt(schema, path.slice(0, -1)));
    const fix = keys.length === 0 ? hint : chooseOneOf(String(path.at(-1)), keys);
    return { what: `${place} is not a key here.`, fix };
  }
  const words = wordsOf(schemaAt(schema, path));
  if (isMissing(issue)) return { what: `${place} is missing.`, fix: `Add the key ${String(path.at(-1))}.` };
  const is = `${place} is ${shortened(issue.received)}`;
  if (words.length > 0)
    return { what: `${is}, which has no meaning here.`, fix: chooseOneOf(String(issue.input), words) };
  return {
    what: `${is}, expected ${kinds[issue.expected ?? ''] ?? issue.expected ?? issue.message}.`,
    fix: hint,
  };
}

/** Kinds of values, as people call them. */
const kinds: Readonly<Record<string, string>> = {
  Array: 'a list, such as [a, b]',
  Object: 'keys with values',
  string: 'a text',
  number: 'a number',
};

/** A key that is missing is most likely the one beside it that is wrong. */
function worst([first, ...others]: readonly [Issue, ...Issue[]]): Issue {
  const beside = dotted(pathOf(first).slice(0, -1));
  const wrong = others.find((o) => o.expected === 'never' && dotted(pathOf(o).slice(0, -1)) === beside);
  return isMissing(first) && wrong !== undefined ? wrong : first;
}

function isMissing({ received, path }: Issue): boolean {
  return received === 'undefined' && path !== undefined;
}

function pathOf({ path = [] }: Issue): readonly unknown[] {
  return path.map(({ key }) => key);
}

/** `messages[3].only.file`, as the rest of the errors name places. */
function dotted(path: readonly unknown[]): string {
  if (path.length === 0) return 'the top level';
  return path
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
    .join('')
    .replace(/^\./, '');
}

const mostShown = 60;

function shortened(received: string): string {
  return received.length > mostShown ? `${received.slice(0, mostShown)}...` : received;
}

/** The part of a shape that stands at a path; `undefined` where the path leaves it. */
function schemaAt(schema: unknown, path: readonly unknown[]): unknown {
  const bare = bared(schema);
  const [key, ...rest] = path;
  if (path.length === 0) return bare;
  if (!isRecord(bare)) return undefined;
  if (isRecord(bare.entries)) return schemaAt(bare.entries[String(key)], rest);
  return schemaAt(bare.item ?? bare.value, rest);
}

/** What an optional part is, where it is there. */
function bared(schema: unknown): unknown {
  return isRecord(schema) && schema.wrapped !== undefined ? bared(schema.wrapped) : schema;
}

function keysOf(schema: unknown): readonly string[] {
  return isRecord(schema) && isRecord(schema.entries) ? Object.keys(schema.entries) : [];
}

function wordsOf(schema: unknown): readonly string[] {
  if (!isRecord(schema) || schema.type !== 'picklist' || !Array.isArray(schema.options)) return [];
  return schema.options.map(String);
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
