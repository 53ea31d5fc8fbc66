import * as v from 'valibot';
import {
  type Document,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  LineCounter,
  parseDocument,
  visit,
} from 'yaml';
import type { SourceLine } from '../../vocabulary.ts';
import { InputError } from '../bytes/input-error.ts';
import { misfitOf } from './yaml-misfit.ts';

/** What a YAML text says, and on which line a place in it, such as `messages[3]`, stands. */
export interface YamlPlaces<T> {
  readonly value: T;
  readonly lineOf: (place: string) => SourceLine;
}

/**
 * Reads a YAML 1.2 text of a given shape. Throws InputError with the file, the line or the place inside it, what was
 * expected, and the nearest right word, or `hint`.
 */
export function readYaml<S extends v.GenericSchema>(
  file: string,
  text: string,
  schema: S,
  hint: string,
): v.InferOutput<S> {
  return readYamlPlaces(file, text, schema, hint).value;
}

/** The same, with the lines of its places. */
export function readYamlPlaces<S extends v.GenericSchema>(
  file: string,
  text: string,
  schema: S,
  hint: string,
): YamlPlaces<v.InferOutput<S>> {
  const { document, lines } = parsed(file, text);
  const result = v.safeParse(schema, plain(file, document) ?? {});
  if (!result.success) {
    const { what, fix } = misfitOf(schema, result.issues, hint);
    throw new InputError(file, what, fix);
  }
  return { value: result.output, lineOf: (place) => lineAt(file, text, document, lines, place) };
}

/** The line that a place stands on: that of its key, or of its item in a list. */
function lineAt(
  file: string,
  text: string,
  document: Document,
  lines: LineCounter,
  place: string,
): SourceLine {
  let node: unknown = document.contents;
  let at = 0;
  for (const step of stepsOf(place, document)) {
    const found = isMap(node)
      ? node.items.find(({ key }) => isScalar(key) && String(key.value) === step)
      : isSeq(node)
        ? node.items[Number(step)]
        : undefined;
    const marked = isPair(found) ? found.key : found;
    if (isNode(marked)) at = marked.range?.[0] ?? at;
    node = isPair(found) ? found.value : found;
  }
  const { line } = lines.linePos(at);
  const from = text.lastIndexOf('\n', at - 1) + 1;
  const to = text.indexOf('\n', at);
  return {
    file,
    line: Math.max(line, 1),
    text: text.slice(from, to < 0 ? undefined : to).replace(/\r$/, ''),
  };
}

/** `parameters.Node.Duty` has two steps: a name may hold full stops. */
function stepsOf(place: string, document: Document): readonly string[] {
  const [, key = place, rest = ''] = /^(\w+)(.*)$/s.exec(place) ?? [];
  if (isMap(document.get(key))) return [key, rest.slice(1)];
  return place.split(/[.[\]]+/).filter((step) => step !== '');
}

/** What the document says as plain data. Throws InputError for an alias of nothing, or for aliases of aliases without end. */
function plain(file: string, document: Document): unknown {
  try {
    return document.toJS();
  } catch (error) {
    if (!(error instanceof ReferenceError)) throw error;
    throw new InputError(file, 'it has an alias that cannot be resolved.', 'Write out what it stands for.');
  }
}

/** A phrasebook of 20,000 keys has a tenth of it. Chosen here. */
export const mostYaml = 10_000_000;

/** The refusal of what no person wrote. */
export function tooLargeYaml(file: string): InputError {
  return new InputError(
    file,
    'it is larger than 10 MB, too large for a phrasebook or job file.',
    'Check the file name, or remove duplicate rules.',
  );
}

const quoteHint =
  'Write the pattern in single quotes, where a backslash stands for itself (\'\\d\'), or double each backslash ("\\\\d").';

function parsed(file: string, text: string): { readonly document: Document; readonly lines: LineCounter } {
  if (text.length > mostYaml) throw tooLargeYaml(file);
  // The package's own pretty messages take time by the square of the line ends; the line is found without them.
  const lines = new LineCounter();
  const document = parseDocument(text, {
    version: '1.2',
    prettyErrors: false,
    lineCounter: lines,
    // The package compares each key with all before it.
    uniqueKeys: false,
  });
  const [problem] = document.errors;
  const unfit = problem === undefined ? unfitKey(document) : null;
  if (problem === undefined && unfit === null) return { document, lines };
  const said = problem?.message ?? unfit?.what ?? '';
  const what = (said.split('\n')[0] ?? '').replace(/ at line.*$/, '').replace(/[.:]+$/, '');
  const { line } = lines.linePos(problem?.pos[0] ?? unfit?.at ?? 0);
  // What the package says where it stopped: it reads what lies within by a call within a call.
  if (said.startsWith('Maximum call stack'))
    throw new InputError(`${file}:${line}`, 'it is nested too deeply.', 'Correct the YAML.');
  const isEscape = problem?.code === 'BAD_DQ_ESCAPE';
  throw new InputError(`${file}:${line}`, `${what}.`, isEscape ? quoteHint : 'Correct the YAML.');
}

/** The first key that is no word, or that its map had before, and where it stands; `null` where all are fit. */
function unfitKey(document: Document): { readonly what: string; readonly at: number } | null {
  let found: { readonly what: string; readonly at: number } | null = null;
  visit(document, {
    Map(_key, map) {
      const known = new Set<unknown>();
      for (const { key } of map.items) {
        const at = (isNode(key) ? key.range?.[0] : undefined) ?? map.range?.[0] ?? 0;
        // The package would write it out as a text, with all that it holds, once for each map that it lies in.
        if (!isScalar(key)) found = { what: 'A key is a list, a map or an alias, where a word belongs', at };
        else if (known.has(key.value)) found = { what: 'Map keys must be unique', at };
        else known.add(key.value);
        if (found !== null) return visit.BREAK;
      }
      return undefined;
    },
  });
  return found;
}

/** A key or a value in a YAML text: where it stands, and by which keys and places in lists it is reached. */
export interface YamlScalar {
  readonly path: readonly string[];
  readonly from: number;
  readonly to: number;
}

/** All keys and values of a YAML text in their order; the path of a key ends with it. Throws InputError if it is no YAML. */
export function scalarsIn(file: string, text: string): readonly YamlScalar[] {
  const found: YamlScalar[] = [];
  const walk = (node: unknown, path: readonly string[]): void => {
    if (isScalar(node) && isNode(node) && node.range) {
      const [from, to] = node.range;
      found.push({ path, from, to });
    } else if (isSeq(node))
      for (const [index, item] of node.items.entries()) walk(item, [...path, String(index)]);
    else if (isMap(node))
      for (const { key, value } of node.items) {
        const own = [...path, isScalar(key) ? String(key.value) : ''];
        walk(key, own);
        walk(value, own);
      }
  };
  walk(parsed(file, text).document.contents, []);
  return found;
}

/** Changes to a YAML text that leave the rest of it, comments too, as it was. Keys are those of the top level. */
export interface YamlEdit {
  append(key: string, value: unknown): void;
  prepend(key: string, value: unknown): void;
  put(key: string, name: string, value: unknown): void;
  /** Puts a value at a place within a map of that key, and leaves the rest of the map. */
  within(key: string, path: readonly [string, ...string[]], value: unknown): void;
}

/** The text with changes made to it. Throws InputError if it is no YAML. */
export function editYaml(file: string, text: string, change: (edit: YamlEdit) => void): string {
  const { document } = parsed(file, text);
  if (!isMap(document.contents)) document.contents = document.createNode({});
  const listOf = (key: string): unknown[] => {
    if (!isSeq(document.get(key))) document.set(key, document.createNode([]));
    const list = document.get(key);
    return isSeq(list) ? list.items : [];
  };
  change({
    append: (key, value) => listOf(key).push(document.createNode(value)),
    prepend: (key, value) => listOf(key).unshift(document.createNode(value)),
    put: (key, name, value) => {
      if (!isMap(document.get(key))) document.set(key, document.createNode({}));
      document.setIn([key, name], document.createNode(value));
    },
    within: (key, path, value) => {
      if (!isMap(document.get(key))) document.set(key, document.createNode({}));
      for (let depth = 1; depth < path.length; depth += 1) {
        const parent = [key, ...path.slice(0, depth)];
        if (!isMap(document.getIn(parent))) document.setIn(parent, document.createNode({}));
      }
      document.setIn([key, ...path], document.createNode(value));
    },
  });
  return document.toString({ lineWidth: 0 });
}
