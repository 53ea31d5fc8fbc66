/** Fields further down than this are none that a log writes. */
const deepest = 16;

/** The fields of a JSON object as text; one of an object within it has a dotted path: `host.name`. Lists are passed over. */
export function jsonFields(value: object): ReadonlyMap<string, string> {
  const fields = new Map<string, string>();
  addFields(fields, value, '', deepest);
  return fields;
}

function addFields(fields: Map<string, string>, value: object, path: string, depth: number): void {
  for (const [key, field] of Object.entries(value)) {
    const name = path + key;
    if (field === null || Array.isArray(field)) continue;
    if (typeof field !== 'object') {
      // A key that is spelt like a path comes first: it is what a reader of the line sees.
      if (path === '' || !fields.has(name)) fields.set(name, String(field));
    } else if (depth > 0) addFields(fields, field, `${name}.`, depth - 1);
  }
}
