import { platform } from '../../src/cli/platform.ts';
import type { FileSource } from '../../src/import/bytes/file-source.ts';
import { readFile } from '../../src/import/read-file.ts';
import { readPhrasebook } from '../../src/import/read-phrasebook.ts';
import { type Analysed, analyse, type Imported, importFiles, unpackFiles } from '../../src/pipeline.ts';
import type { ImportedFile } from '../../src/vocabulary.ts';

/** Options of an import that a test may set. */
export interface TextOptions {
  readonly phrasebook?: string;
  readonly zone?: string;
  readonly order?: 'day-first' | 'month-first';
  readonly year?: number;
  readonly neighbour?: number;
  /** The general lane alone. */
  readonly isGeneralOnly?: boolean;
  /** Bytes per chunk. */
  readonly chunk?: number;
}

/** A file of some text, in pieces of that size. */
export function sourceOf(name: string, content: string | Uint8Array, size = 65_536): FileSource {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const chunk = Math.min(size, bytes.length);
  return {
    name,
    bytes: bytes.length,
    async *open() {
      // A piece holds until the second next is asked for, and no longer.
      const memory = [new Uint8Array(chunk), new Uint8Array(chunk)];
      for (let at = 0, turn = 0; at < bytes.length; at += chunk, turn = 1 - turn) {
        const piece = memory[turn]?.fill(0x23) ?? new Uint8Array(0);
        piece.set(bytes.subarray(at, at + chunk));
        yield piece.subarray(0, Math.min(chunk, bytes.length - at));
      }
    },
  };
}

function optionsOf(options: TextOptions): Parameters<typeof readFile>[1] {
  return {
    phrasebook: readPhrasebook('phrasebook.yaml', options.phrasebook ?? null),
    zone: options.zone ?? null,
    order: options.order ?? null,
    year: options.year ?? null,
    neighbour: options.neighbour ?? null,
    sha256: platform.sha256,
    isGeneralOnly: options.isGeneralOnly ?? false,
  };
}

/** Reads one file from its text or bytes. */
export async function readText(
  name: string,
  content: string | Uint8Array,
  options: TextOptions = {},
): Promise<ImportedFile> {
  return readFile(sourceOf(name, content, options.chunk), optionsOf(options));
}

/** Reads several files. */
export async function readTexts(
  files: Readonly<Record<string, string | Uint8Array>>,
  options: TextOptions = {},
): Promise<Imported> {
  const sources = Object.entries(files).map(([name, content]) => sourceOf(name, content, options.chunk));
  return importFiles(sources, optionsOf(options));
}

/** Reads several files as they are stored: archives are unpacked first. */
export async function readStored(
  files: Readonly<Record<string, Uint8Array>>,
  options: TextOptions = {},
): Promise<Imported> {
  const stored = Object.entries(files).map(([name, bytes]) => ({
    ...sourceOf(name, bytes, options.chunk),
    bytes: bytes.length,
    slice: async (from: number, to: number) => bytes.slice(from, to),
  }));
  const { sources, failures } = await unpackFiles(stored, platform);
  const imported = await importFiles(sources, optionsOf(options));
  return { ...imported, failures: [...failures, ...imported.failures] };
}

/** Reads and analyses several files. */
export async function analyseTexts(
  files: Readonly<Record<string, string | Uint8Array>>,
  options: TextOptions = {},
): Promise<Analysed> {
  return analyse(await readTexts(files, options));
}

/**
 * A short journal of 14 March 2026 as a file of the layout lines, each line on its own line number: `10:00:00  RO1 A
 * firmware 6.4.1`. Milliseconds are added where a line has none, so that stamps are exact.
 */
export function journalText(journal: string): string {
  const lines = journal
    .trim()
    .split('\n')
    .map((line) => {
      const [clock = '', ...rest] = line.trim().split(/\s+/);
      const half = /^[AB12]$/.test(rest[1] ?? '') ? `-${rest[1]}` : '';
      const stamp = clock.includes('.') ? clock : `${clock}.000`;
      return `2026-03-14T${stamp}Z ${rest[0]}${half} ${rest.slice(half === '' ? 1 : 2).join(' ')}`;
    });
  return `${lines.join('\n')}\n`;
}
