import type { Random } from '../../../samples/random.ts';
import type { Story } from '../../../samples/story.ts';
import type { Dressed } from '../stories/dressing.ts';
import type { Verified } from '../verify-files.ts';

/** Files as they are given to the program, in their order. */
export interface Given {
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  /** `null`: plain English. */
  readonly phrasebook: string | null;
}

/** What answers: the program, or in a test something that is known to be wrong. */
export type Answerer = (given: Given) => Promise<Verified>;

/** A story to hold the program to. */
export interface Told {
  readonly seed: number;
  readonly story: Story;
  /** Its swaps, each with the stretch of the story that is its own; empty where the rules of truth know of none. */
  readonly swaps: readonly Story[];
}

/** How an answer is read, so that it can be compared with the one before the change. */
export interface View {
  /** An instant of the changed files (milliseconds UTC), as it was before. */
  time(time: number): number;
  /** A half as it was called before. */
  half(half: string): string;
}

/** Files after a change. */
export interface Changed {
  readonly given: Given;
  /** What was changed, in a few words. */
  readonly what: string;
  /** How to read the answer; as it is unless said. */
  readonly view?: View;
  /**
   * Checks that may turn from `fail` to `pass`: what broke them is truly not in what is left (the log was cut before it), or is
   * hidden there by the contract (see `isHidden`).
   */
  readonly mayPass?: ReadonlySet<string>;
  /** Only the verdict is compared: by no rule can the order of what different files tell be known. */
  readonly onlyVerdict?: boolean;
  /** Checks that may fail now, since what puts them right comes later. */
  readonly mayFail?: ReadonlySet<string>;
}

/**
 * What must be between the answers to two versions of the same files.
 *
 * - `same`: the answer may not change at all.
 * - `weaker`: the files say less. No `fail` may become `pass`, no `pass` `fail`; nothing `not-verified` may become `verified`,
 *   and nothing `verified` `not-verified`. Anything may become `inconclusive` or `not-observed`.
 */
export interface Relation {
  readonly id: string;
  readonly kind: 'same' | 'weaker';
  /** A `pass` may become `fail` too: the files say other things, not less. */
  readonly mayFail?: boolean;
  /** Every way to do it to these files that chance leaves; empty where it cannot be done. */
  change(dressed: Dressed, told: Told, random: Random): readonly Changed[];
}
