import { parseJson } from '../layouts/parse-json.ts';

/** The fields of a line of JSON or of key=value, what is nested left out; `null` for a line of neither. */
export function readFields(line: string): ReadonlyMap<string, string> | null {
  const text = line.trim();
  return text.startsWith('{') ? jsonFields(text) : pairsIn(text);
}

function jsonFields(text: string): ReadonlyMap<string, string> | null {
  const value = parseJson(text);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  return new Map(
    Object.entries(value).flatMap(([key, field]) =>
      field === null || typeof field === 'object' ? [] : [[key, String(field)] as const],
    ),
  );
}

function pairsIn(text: string): ReadonlyMap<string, string> | null {
  const fields = new Map<string, string>();
  const pair = /\s*([A-Za-z_][\w.-]*)=("(?:[^"\\]|\\.)*"|\S*)/y;
  let end = 0;
  for (let found = pair.exec(text); found !== null; found = pair.exec(text)) {
    const [, key = '', value = ''] = found;
    fields.set(key, value.startsWith('"') ? value.slice(1, -1).replace(/\\(.)/g, '$1') : value);
    end = pair.lastIndex;
  }
  return fields.size < 2 || text.slice(end).trim() !== '' ? null : fields;
}
