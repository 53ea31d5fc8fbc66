import * as v from 'valibot';
import { parseDocument } from 'yaml';
import { InputError } from './input-error.ts';

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
  const document = parseDocument(text, { version: '1.2' });
  const problem = document.errors[0];
  if (problem !== undefined) {
    const what = (problem.message.split('\n')[0] ?? '').replace(/ at line.*$/, '').replace(/[.:]+$/, '');
    throw new InputError(`${file}:${problem.linePos?.[0].line ?? 1}`, `${what}.`, 'Correct the YAML.');
  }
  const result = v.safeParse(schema, document.toJS() ?? {});
  if (result.success) return result.output;
  const issue = result.issues[0];
  const path = v.getDotPath(issue) ?? 'the top level';
  const what =
    issue.expected === 'never'
      ? 'is not a key here'
      : `is ${issue.received}, expected ${issue.expected ?? issue.message}`;
  throw new InputError(file, `${path} ${what}.`, hint);
}
