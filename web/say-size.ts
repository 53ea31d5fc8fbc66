import { sayCount } from '../src/report/words.ts';

/** A number of bytes as a person says it. */
export function saySize(bytes: number): string {
  const figure = (value: number): string =>
    value.toLocaleString('en', { minimumFractionDigits: 1, maximumFractionDigits: 1 });
  if (bytes >= 1e6) return `${figure(bytes / 1e6)} MB`;
  return bytes >= 1000 ? `${figure(bytes / 1000)} kB` : sayCount(bytes, 'byte');
}
