type Files = Readonly<Record<string, string | Uint8Array>>;

/**
 * Reads the same files once, however often tests ask: reading takes twenty times as long as all that comes after it. What was
 * read is frozen, so that no mutant can spoil it for the next.
 */
export function readOnce<O, R>(
  read: (files: Files, options?: O) => Promise<R>,
): (files: Files, options?: O) => Promise<R> {
  const known = new Map<string, Promise<R>>();
  return (files, options) => {
    const texts = Object.entries(files).map(([name, content]) => [
      name,
      typeof content === 'string' ? content : content.join(' '),
    ]);
    const key = JSON.stringify([texts, options]);
    const found = known.get(key) ?? read(files, options).then(frozen);
    known.set(key, found);
    return found;
  };
}

function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value) || Object.isFrozen(value))
    return value;
  Object.freeze(value);
  for (const part of Object.values(value)) frozen(part);
  return value;
}
