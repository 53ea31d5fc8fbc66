/** One value from outside beside what the project computes; `tolerance` is absolute, 0 for exact. */
export interface CheckValue {
  readonly method: string;
  readonly what: string;
  /** Title, section, year; after `as`: who computed the digits. */
  readonly source: string;
  readonly expected: number | null;
  readonly computed: number | null | undefined;
  readonly tolerance: number;
}

/** A tolerance relative to the value expected. */
export function relative(expected: number, share: number): number {
  return Math.abs(expected) * share;
}
