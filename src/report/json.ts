import { jsonEscaped } from './escape.ts';

const instants: ReadonlySet<string> = new Set(['time', 'earliest', 'from', 'to']);

/**
 * A document as JSON text, indented by one space and ended by a line end. Instants become ISO 8601 UTC with
 * milliseconds, numbers are as `asFigure` gives them. Throws RangeError for a number that JSON cannot hold.
 */
export function toJson(document: unknown): string {
  return asText(document, 1);
}

/** The same on one line, for documents that follow each other. */
export function toJsonLine(document: unknown): string {
  return asText(document, 0);
}

function asText(document: unknown, indent: number): string {
  const text = JSON.stringify(
    document,
    (key, value: unknown) => {
      if (typeof value !== 'number') return value;
      if (!Number.isFinite(value)) throw new RangeError(`${key} is no finite number`);
      return instants.has(key) ? iso(value) : asFigure(value);
    },
    indent,
  );
  return `${jsonEscaped(text)}\n`;
}

/**
 * A number as a document gives it: nine significant digits, from a hundred thousand on three decimals. What follows differs
 * from one engine's logarithm to the next, and a page must write what the command writes.
 */
export function asFigure(value: number): number {
  return Math.abs(value) < 1e5 ? Number(value.toPrecision(9)) : Math.round(value * 1000) / 1000;
}

/** An instant as ISO 8601 UTC with milliseconds. */
export function iso(time: number): string {
  return new Date(time).toISOString();
}
