import type { Gauge, Signal } from '../../vocabulary.ts';
import type { DatePattern } from '../clock/date-pattern.ts';
import type { ColumnKey } from './column-keys.ts';
import type { Pattern } from './patterns.ts';

export interface UnitRule {
  readonly pattern: Pattern;
  readonly pair: string | undefined;
  readonly half: string | undefined;
  readonly role: 'active' | 'standby' | undefined;
  /** It is none of the site's own. */
  readonly isBuiltIn?: boolean;
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
}

/** A site's wording, ready for use: its own rules first, then those of plain English. */
export interface Phrasebook {
  readonly file: string;
  readonly site: string | null;
  readonly zone: string | undefined;
  readonly order: 'day-first' | 'month-first' | undefined;
  readonly year: number | undefined;
  /** How the site writes its stamps. */
  readonly pattern: DatePattern | undefined;
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
