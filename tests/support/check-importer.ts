import { describe, expect, test } from 'vitest';
import { allChanges } from '../../src/changes.ts';
import type { Importer } from '../../src/import/layouts/importer.ts';
import type { Change, RowCounts } from '../../src/vocabulary.ts';
import { comparable } from './comparable.ts';
import { readText, type TextOptions } from './read-text.ts';

export interface ImporterCase extends TextOptions {
  readonly name: string;
  readonly file: string;
  readonly text: string;
  /** `signal value half|role|pair line`, in the order of the file; instants as seconds after the first change. */
  readonly changes: readonly string[];
  readonly rows?: Partial<RowCounts>;
}

/** Runs a table of files through the import; each must be read by this importer, alike in both lanes, and its rows must add up. */
export function checkImporter(importer: Importer, cases: readonly ImporterCase[]): void {
  describe(importer.id, () => {
    test('has no two cases alike', () => {
      expect(new Set(cases.map((c) => `${c.file}\n${c.text}`)).size).toBe(cases.length);
    });
    for (const { name, file, text, changes, rows, ...options } of cases) {
      test(name, async () => {
        const read = await readText(file, text, options);
        expect(read.input.layout).toBe(importer.id);
        expect(allChanges(read.changes).map(toLine)).toEqual(changes);
        const { read: all, ...counts } = read.input.rows;
        expect(Object.values(counts).reduce((a, b) => a + b, 0)).toBe(all);
        expect(read.input.rows).toMatchObject(rows ?? {});
        const general = await readText(file, text, { ...options, isGeneralOnly: true });
        expect(comparable(general)).toEqual(comparable(read));
      });
    }
  });
}

function toLine(change: Change): string {
  const { time, earliest, subject, signal, value, line } = change;
  const clock = (at: number): string => new Date(at).toISOString().slice(11, 23);
  const when = earliest === time ? clock(time) : `${clock(earliest)}..${clock(time)}`;
  return [
    when,
    subject.pair,
    subject.half ?? subject.role ?? 'pair',
    signal,
    value ?? '-',
    `line ${line}`,
  ].join(' ');
}
