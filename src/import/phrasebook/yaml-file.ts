import * as v from 'valibot';
import { type Document, isMap, isSeq, LineCounter, parseDocument } from 'yaml';
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

function parsed(file: string, text: string): Document {
  // The package's own pretty messages take time by the square of the line ends; the line is found without them.
  const lines = new LineCounter();
  const document = parseDocument(text, { version: '1.2', prettyErrors: false, lineCounter: lines });
  const problem = document.errors[0];
  if (problem === undefined) return document;
  const what = (problem.message.split('\n')[0] ?? '').replace(/ at line.*$/, '').replace(/[.:]+$/, '');
  throw new InputError(`${file}:${lines.linePos(problem.pos[0]).line}`, `${what}.`, 'Correct the YAML.');
}

/** Changes to a YAML text that leave the rest of it, comments too, as it was. Keys are those of the top level. */
export interface YamlEdit {
  append(key: string, value: unknown): void;
  prepend(key: string, value: unknown): void;
  put(key: string, name: string, value: unknown): void;
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
  });
  return document.toString({ lineWidth: 0 });
}
