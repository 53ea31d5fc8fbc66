const instants: ReadonlySet<string> = new Set(['time', 'earliest', 'from', 'to']);

/**
 * A document as JSON text, indented by one space and ended by a line end. Instants become ISO 8601 UTC with
 * milliseconds. Throws RangeError for a number that JSON can not hold.
 */
export function toJson(document: unknown): string {
  const text = JSON.stringify(
    document,
    (key, value: unknown) => {
      if (typeof value !== 'number') return value;
      if (!Number.isFinite(value)) throw new RangeError(`${key} is no finite number`);
      return instants.has(key) ? iso(value) : value;
    },
    1,
  );
  return `${text}\n`;
}

/** An instant as ISO 8601 UTC with milliseconds. */
export function iso(time: number): string {
  return new Date(time).toISOString();
}
