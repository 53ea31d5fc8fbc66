import type { TimeReader } from '../clock/time-reader.ts';

/** A line taken apart: a message, or fields by name. `stamp` is a text, or an instant that was read already. */
export interface LineParts {
  readonly stamp: string | number;
  readonly unit: string;
  readonly message: string | null;
  readonly fields: ReadonlyMap<string, string>;
}

/** One way of writing a line; `null` for a line that is not written so, `wrong` for one that is and breaks its rules. */
export interface LineFormat {
  readonly id: string;
  readonly title: string;
  /** Whether a line that it takes speaks for it; where it is not given, every one does. */
  speaks?(parts: LineParts): boolean;
  take(line: string, times: TimeReader): LineParts | { readonly wrong: string } | null;
}
