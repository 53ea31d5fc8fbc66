import type { Gauge, Signal, SourceLine, Subject } from '../../vocabulary.ts';
import type { DatePattern } from '../clock/date-pattern.ts';
import type { ColumnKey } from './column-keys.ts';
import type { Groups, Pattern } from './patterns.ts';
import type { PhrasebookText } from './phrasebook-schema.ts';

/** Where a rule stands in the phrasebook, such as `messages[3]`; `null` for plain English. */
export type Place = string | null;

export interface UnitRule {
  readonly place: Place;
  readonly pattern: Pattern;
  /** Plain English, which takes any word for a pair, and a unit in any case for one: it is none of the site's own. */
  readonly isBuiltIn?: boolean;
  readonly pair: string | undefined;
  readonly half: string | undefined;
  readonly role: 'active' | 'standby' | undefined;
}

export interface ParameterRule {
  readonly place: Place;
  readonly signal: Signal | Gauge;
  readonly subject: 'pair' | 'half' | 'active' | 'standby' | undefined;
  readonly values: Readonly<Record<string, string>>;
  readonly scale: number;
}

/** The rule of a parameter, and what its name says besides: the named groups of a pattern. */
export interface NamedParameter {
  readonly rule: ParameterRule;
  readonly groups: Groups;
}

/** The rules for all parameters whose names a pattern fits. */
export interface ParameterPatterns {
  /** The first that fits; `null` if none does. */
  readonly find: (name: string) => NamedParameter | null;
  /** A name may say of which unit it is. */
  readonly nameUnits: boolean;
}

/** One thing that a message says. */
export interface MeaningRule {
  readonly signal: Signal;
  readonly subject: ParameterRule['subject'];
  /** `other`: the half that does not speak; `self`: the one that does, no matter what the words name. */
  readonly of: 'other' | 'self' | undefined;
  readonly half: string | undefined;
  readonly role: 'active' | 'standby' | undefined;
  readonly value: string | undefined;
  readonly values: Readonly<Record<string, string>>;
  /** What it says where the condition no longer stands; `ignore`: nothing. */
  readonly off: string | undefined;
}

export interface MessageRule {
  readonly place: Place;
  readonly pattern: Pattern;
  readonly only: { readonly file: string | undefined; readonly unit: Pattern | undefined };
  readonly means: readonly MeaningRule[];
}

export interface FileRule {
  readonly place?: Place;
  readonly match: string;
  readonly layout: string | undefined;
  readonly columns: Readonly<Partial<Record<ColumnKey, string | undefined>>>;
  readonly line: Pattern | undefined;
  /** Which states of a condition mean that it stands, and which that it no longer does; undefined for plain English. */
  readonly states?: Readonly<Record<string, 'on' | 'off'>> | undefined;
  /** Which qualities say that a reading was observed; undefined for the usual ones. */
  readonly good?: readonly string[] | undefined;
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

/** A rule of the site's own, as it is named where it was of no use. */
export interface OwnRule {
  readonly kind: 'file' | 'key' | 'unit' | 'parameter' | 'message' | 'ignore' | 'ignoreUnits';
  readonly place: string;
  /** Its pattern, name or key. */
  readonly text: string;
  /** For a key of a rule for files: that rule. */
  readonly of?: string;
  /** The rule before it that takes all that it could fit. */
  readonly shadowedBy?: string | undefined;
}

/** The patterns under one key. */
export interface OwnPatterns {
  readonly key: string;
  readonly count: number;
  /** The place in the list of the first that fits; `null` if none does. */
  readonly first: (text: string) => number | null;
  /** False only if `first` gives the same for all texts of that shape. */
  readonly digitsMatter: (shape: string) => boolean;
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
  /** What its text says, without plain English. */
  readonly own: PhrasebookText;
  readonly site: string | null;
  readonly files: readonly FileRule[];
  readonly units: readonly UnitRule[];
  readonly parameters: ReadonlyMap<string, ParameterRule>;
  /** Those between slashes, `null` without any; names to the letter come before them. */
  readonly parameterPatterns: ParameterPatterns | null;
  /** The site's own; then what it ignores; then plain English, which is compiled when a log first needs it. */
  readonly messages: readonly MessageRule[];
  readonly plainMessages: () => readonly MessageRule[];
  readonly notes: () => readonly MessageRule[];
  readonly ignore: OwnPatterns;
  /** Units whose rows mean nothing. */
  readonly ignoreUnits: OwnPatterns;
  /** All rules of the site's own, in their order. */
  readonly ownRules: () => readonly OwnRule[];
  /** The line of the phrasebook that a place in it stands on. */
  readonly lineOf: (place: string) => SourceLine;
}

/** The places of the rules that were of use to a run. */
export type UsedRules = Set<string>;

/** Notes that a rule was of use. */
export function noteUsed(used: UsedRules, place: Place): void {
  if (place !== null) used.add(place);
}

/** True for wording that the site says means nothing. */
export function isIgnored({ ignore }: Phrasebook, wording: string, used: UsedRules): boolean {
  return fitsOwn(ignore, wording, used);
}

/** True if one of the patterns fits; the first that does was of use. */
export function fitsOwn({ key, first }: OwnPatterns, text: string, used: UsedRules): boolean {
  const index = first(text);
  if (index !== null) used.add(`${key}[${index}]`);
  return index !== null;
}
