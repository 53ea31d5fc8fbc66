import { detached } from '../bytes/decode.ts';

/** The texts that were asked about, with the answers. */
export interface Noted<T> {
  readonly answers: ReadonlyMap<string, T>;
  /** False once there were too many to keep. */
  isAll(): boolean;
  add(text: string, answer: T): void;
}

/** So many texts of one kind are kept of a file: beyond that it is read once more. Chosen here. */
const mostTexts = 20_000;

/** Nothing was asked yet. */
export function noted<T>(): Noted<T> {
  const answers = new Map<string, T>();
  let isAll = true;
  return {
    answers,
    isAll: () => isAll,
    add(text, answer) {
      if (answers.has(text)) return;
      if (answers.size < mostTexts) answers.set(detached(text), answer);
      else isAll = false;
    },
  };
}
