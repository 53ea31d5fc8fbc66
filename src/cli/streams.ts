import type { Worker } from 'node:worker_threads';

/** Where a command writes: the result on stdout, everything else on stderr. */
export interface Streams {
  readonly stdout: Output;
  readonly stderr: Output;
  /** Begins another thread of this program, where it is one file that can be begun again. */
  readonly newThread?: () => Worker;
}

export interface Output {
  write(text: string): void;
  /** A person is looking: progress and colour make sense. */
  readonly isTerminal: boolean;
  /** The file that it goes to, as `identityOf` names it, where it goes to one. */
  readonly goesTo?: string | null;
  /** The terminal that it goes to, with colour or without, where lines can be written over. */
  readonly screen?: Screen;
}

/** The size of a terminal as it is now. */
export interface Screen {
  columns(): number;
  rows(): number;
  /** Tells of every new size until what it gives is called. */
  onResize(tell: () => void): () => void;
}
