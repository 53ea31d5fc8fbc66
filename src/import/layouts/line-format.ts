import type { TimeReader } from '../clock/time-reader.ts';
import type { FieldReader, LineParts } from './line-fields.ts';

/** What a rule for the file says of its lines. */
export interface LineRules {
  readonly fields: FieldReader;
  /** Whether a text is a unit where a unit may stand; `null` where one must. */
  readonly isUnit: ((text: string) => boolean) | null;
  /** How stamps are written is said by the phrasebook: they are read as they stand. */
  readonly hasStampPattern: boolean;
}

/** One way of writing a line; `null` for a line that is not written so, `wrong` for one that is and breaks its rules. */
export interface LineFormat {
  readonly id: string;
  readonly title: string;
  /** Its stamp may stand anywhere in a line. */
  readonly hasFields?: true;
  /** Whether a line that it takes speaks for it; where it is not given, every one does. */
  speaks?(parts: LineParts): boolean;
  take(line: string, times: TimeReader, rules: LineRules): LineParts | { readonly wrong: string } | null;
}
