import * as v from 'valibot';
import { type Document, isMap, isScalar, isSeq, LineCounter, parseDocument, visit } from 'yaml';
import { InputError } from '../bytes/input-error.ts';

/**
 * Reads a YAML 1.2 text of a given shape. Throws InputError with the file, the line or the place inside it, what was
 * expected, and `hint`.
 */
export function readYaml<S extends v.GenericSchema>(
  file: string,
  text: string,
  schema: S,
  hint: string,
): v.InferOutput<S> {
  const document = parsed(file, text);
  const result = v.safeParse(schema, plain(file, document) ?? {});
  if (result.success) return result.output;
  const issue = result.issues[0];
  const path = v.getDotPath(issue) ?? 'the top level';
  const what =
    issue.expected === 'never'
      ? 'is not a key here'
      : `is ${shortened(issue.received)}, expected ${issue.expected ?? issue.message}`;
  throw new InputError(file, `${path} ${what}.`, hint);
}

const mostShown = 60;

function shortened(received: string): string {
  return received.length > mostShown ? `${received.slice(0, mostShown)}...` : received;
}

/** What the document says as plain data. Throws InputError for an alias of nothing, or for aliases of aliases without end. */
function plain(file: string, document: Document): unknown {
  try {
    return document.toJS();
  } catch (error) {
    if (!(error instanceof ReferenceError)) throw error;
    throw new InputError(file, 'it has an alias that can not be followed.', 'Write out what it stands for.');
  }
}

/** A phrasebook of a thousand rules has a tenth of it. Chosen here. */
export const mostYaml = 1_048_576;

/** The refusal of what no person wrote. */
export function tooLargeYaml(file: string): InputError {
  return new InputError(
    file,
    'it is larger than 1 MiB, as no phrasebook or job file is.',
    'Check which file was meant, or leave out rules that repeat each other.',
  );
}

function parsed(file: string, text: string): Document {
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
  const repeated = problem === undefined ? repeatedKey(document) : null;
  if (problem === undefined && repeated === null) return document;
  const said = problem?.message ?? 'Map keys must be unique';
  const what = (said.split('\n')[0] ?? '').replace(/ at line.*$/, '').replace(/[.:]+$/, '');
  const { line } = lines.linePos(problem?.pos[0] ?? repeated ?? 0);
  throw new InputError(`${file}:${line}`, `${what}.`, 'Correct the YAML.');
}

/** Where a key stands that its map had before; `null` where none is. */
function repeatedKey(document: Document): number | null {
  let place: number | null = null;
  visit(document, {
    Map(_key, map) {
      const known = new Set<unknown>();
      for (const { key } of map.items) {
        if (!isScalar(key)) continue;
        if (known.has(key.value)) {
          place = key.range?.[0] ?? 0;
          return visit.BREAK;
        }
        known.add(key.value);
      }
      return undefined;
    },
  });
  return place;
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
  const document = parsed(file, text);
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
