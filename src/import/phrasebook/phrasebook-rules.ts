import type { Gauge, Signal, Subject } from '../../vocabulary.ts';
import type { DatePattern } from '../clock/date-pattern.ts';
import type { ColumnKey } from './column-keys.ts';
import type { Pattern } from './patterns.ts';

export interface UnitRule {
  readonly pattern: Pattern;
  /** Plain English, which takes any word for a pair: it is none of the site's own. */
  readonly isBuiltIn?: boolean;
  readonly pair: string | undefined;
  readonly half: string | undefined;
  readonly role: 'active' | 'standby' | undefined;
}

export interface ParameterRule {
  readonly signal: Signal | Gauge;
  readonly subject: 'pair' | 'half' | 'active' | 'standby' | undefined;
  readonly values: Readonly<Record<string, string>>;
  readonly scale: number;
}

export interface MessageRule {
  readonly pattern: Pattern;
  readonly signal: Signal;
  readonly subject: ParameterRule['subject'];
  readonly half: string | undefined;
  readonly role: 'active' | 'standby' | undefined;
  readonly value: string | undefined;
  readonly values: Readonly<Record<string, string>>;
}

export interface FileRule {
  readonly match: string;
  readonly layout: string | undefined;
  readonly columns: Readonly<Partial<Record<ColumnKey, string | undefined>>>;
  readonly line: Pattern | undefined;
  /** What a file without units is about, as its rows would say it. */
  readonly unit?: string | undefined;
  /** Its named groups pair, half, role and unit say whose file it is, by the path of the file. */
  readonly path?: Pattern | undefined;
  /** What begins a record of a text. */
  readonly record?: Pattern | undefined;
  /** What names of the columns of a table say: pair, half, role or unit, and a parameter. */
  readonly header?: Pattern | undefined;
  /** How the file writes its stamps, where that is not how the site does. */
  readonly time?: StampRules | undefined;
  /** Whose file it is, once it is known which file. */
  readonly of?: FileSubject | undefined;
}

/** How stamps are written and read; what is undefined is left to the site, or to the file itself. */
export interface StampRules {
  readonly zone: string | undefined;
  readonly order: 'day-first' | 'month-first' | undefined;
  readonly year: number | undefined;
  readonly pattern: DatePattern | undefined;
}

/** Whose file it is: what its rows are about where they do not say it themselves. */
export interface FileSubject {
  readonly text: string;
  readonly subject: Subject;
  /** The phrasebook names where the rows say their unit: then any name that stands there is one. */
  readonly hasUnits: boolean;
}

/** A site's wording, ready for use: its own rules first, then those of plain English. */
export interface Phrasebook extends StampRules {
  readonly file: string;
  readonly site: string | null;
  readonly files: readonly FileRule[];
  readonly units: readonly UnitRule[];
  readonly parameters: ReadonlyMap<string, ParameterRule>;
  /** The site's own; then what it ignores; then plain English, which is compiled when a log first needs it. */
  readonly messages: readonly MessageRule[];
  readonly plainMessages: () => readonly MessageRule[];
  readonly notes: () => readonly MessageRule[];
  readonly ignore: readonly Pattern[];
}

/** True for wording that the site says means nothing. */
export function isIgnored({ ignore }: Phrasebook, wording: string): boolean {
  return ignore.some((pattern) => pattern.match(wording) !== null);
}
