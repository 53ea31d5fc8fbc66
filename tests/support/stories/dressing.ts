import type { Random } from '../../../samples/random.ts';
import type { Story } from '../../../samples/story.ts';

/** Files by name, in the order in which they are given. */
export type Files = Readonly<Record<string, string>>;

/** What one file can show of a story. */
export interface Source {
  readonly file: string;
  readonly kind: 'journal' | 'poll' | 'notes';
  /** Every signal that it ever tells. */
  readonly signals: ReadonlySet<string>;
  /** Most seconds between two looks; 0 where every change is told. */
  readonly spacingSeconds: number;
  /** Seconds that a stamp leaves open: 0, 1, or 60 for field notes. */
  readonly resolutionSeconds: number;
  /** Seconds by which its clock is ahead. */
  readonly aheadSeconds: number;
  /** It tells of its signals only what its own module saw; the rest stands in another file. */
  readonly isPart?: boolean;
}

/** A story as exports. */
export interface Dressed {
  readonly id: string;
  readonly files: Files;
  readonly sources: readonly Source[];
  /** The phrasebook to read them with; `null`: plain English. */
  readonly phrasebook: string | null;
  /**
   * The sources do not describe what can be seen when, as where clocks differ or an export comes in pieces: a change that takes
   * something away cannot be judged by them.
   */
  readonly isBeyondSources?: boolean;
}

export interface Dressing {
  readonly id: string;
  dress(story: Story, random: Random): Dressed;
}

/** A file with what it can show. */
export interface DressedFile {
  readonly text: string;
  readonly source: Source;
}

/** Puts files together to one dressing. */
export function dressed(
  id: string,
  files: readonly DressedFile[],
  phrasebook: string | null = null,
): Dressed {
  return {
    id,
    files: Object.fromEntries(files.map(({ text, source }) => [source.file, text])),
    sources: files.map(({ source }) => source),
    phrasebook,
  };
}
