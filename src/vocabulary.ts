// biome-ignore-all lint/style/noExcessiveLinesPerFile: the words of design.md stand in one place, which imports nothing.
/**
 * The words of the project as types. Every stage hands the next one plain data of these shapes.
 * Instants are milliseconds UTC; the reports turn them into ISO 8601.
 */

export type NonEmpty<T> = readonly [T, ...T[]];

/** What a state can be, per signal; `null` where any text may stand. */
export const stateValues = {
  role: ['active', 'standby', 'none'],
  'partner-present': ['yes', 'no'],
  'partner-ready': ['yes', 'no'],
  light: ['steady', 'flashing', 'off'],
  firmware: null,
  model: null,
  serial: null,
  'link-a': ['up', 'down'],
  'link-b': ['up', 'down'],
  links: ['straight', 'crossed'],
  configuration: ['current', 'pending'],
  supply: ['good', 'fault'],
} as const;

/** True if the name is one of a state that lasts. */
export function isStateSignal(name: string): name is StateSignal {
  return Object.hasOwn(stateValues, name);
}

export const stateSignals: readonly StateSignal[] = Object.keys(stateValues).filter(isStateSignal);

/** States of the pair, no matter what unit states them. */
export const pairSignals = [
  'partner-present',
  'partner-ready',
  'configuration',
] as const satisfies readonly StateSignal[];

export const gauges = ['load', 'free-memory'] as const;

export const happenings = [
  'removed',
  'inserted',
  'restart',
  'reflash-start',
  'reflash-end',
  'sync-start',
  'sync-failed',
  'switchover-command',
  'switchover',
  'fault',
  'note',
] as const;

/** Happenings of the pair, no matter what unit states them. */
export const pairHappenings = ['switchover', 'switchover-command'] as const satisfies readonly Happening[];

/** True if the name is one of something that happens at an instant. */
export function isHappening(name: string): name is Happening {
  return happenings.some((h) => h === name);
}

export type StateSignal = keyof typeof stateValues;
export type Gauge = (typeof gauges)[number];
export type Happening = (typeof happenings)[number];
/** What an event can be about. */
export type Signal = StateSignal | Happening;

/** One line of a log, as evidence: the name as given, the line counted from 1, the text as read. */
export interface SourceLine {
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

/** A source of an event; `count` says how many identical lines in a row it stands for, `printed` when by the clock of its own file. */
export interface Source extends SourceLine {
  readonly count: number;
  readonly printed: Instant;
}

/** When something happened: in `(earliest, time]` if seen between two readings, else exactly at `time`. */
export interface Instant {
  readonly time: number;
  readonly earliest: number;
}

export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Time from one instant to a later one, in seconds, with the bounds that polling and whole-second stamps leave. */
export interface Duration {
  readonly seconds: number;
  readonly low: number;
  readonly high: number;
}

/** A sentence in pieces: text, and instants that a report shows by the clock of its zone. */
export type Sentence = readonly (string | Instant)[];

// ---- import -------------------------------------------------------------------------------------------------

/** What a value is about, once its unit text is understood. Neither half nor role: the pair, or not said. */
export interface Subject {
  readonly pair: string;
  readonly half: string | null;
  readonly role: 'active' | 'standby' | null;
  /** Where the unit itself names its site. */
  readonly site?: string;
  /** It is about the other half than the one named: only while a run is read, until all halves are known. */
  readonly isOther?: true;
}

/**
 * One change of one stream, as the importer found it. A reading changed in `(earliest, time]`; the first reading of a
 * signal and an entry have `earliest = time`, a note has its minute. A reading with `before` equal to `value` is no change:
 * the signal is read again after it was not, while other signals of its unit were, since `earliest`.
 */
export interface Change extends Instant {
  readonly kind: 'reading' | 'entry' | 'note';
  readonly subject: Subject;
  readonly signal: Signal;
  /** `null`: a happening without text, or nothing is reported there any more (serial, model, firmware). */
  readonly value: string | null;
  /** The stream's value before; `null` for its first reading and for entries. */
  readonly before: string | null;
  /** Index into the file's streams. */
  readonly stream: number;
  readonly line: number;
  readonly text: string;
  readonly count: number;
}

/** What changes are about, all but when, where and to what: one for all changes of a stream that tell of one signal of one subject. */
export type Topic = Pick<Change, 'kind' | 'subject' | 'signal' | 'stream'>;

/**
 * The changes of a file in the order in which its rows told them, each of them a place in every column. `changes.ts` makes objects
 * of them where people read them, and walks them where there are many.
 */
export interface Changes {
  readonly length: number;
  readonly topics: readonly Topic[];
  /** The values that there are; the first is `null`. */
  readonly words: readonly (string | null)[];
  /** Places in the topics and in the words. */
  readonly topic: Uint32Array;
  readonly value: Uint32Array;
  readonly before: Uint32Array;
  readonly time: Float64Array;
  readonly earliest: Float64Array;
  readonly line: Int32Array;
  /** All rows one after the other in UTF-8, and where each ends. */
  readonly text: Uint8Array;
  readonly textEnd: Uint32Array;
  /** How many identical lines those places stand for that stand for more than one. */
  readonly counts: ReadonlyMap<number, number>;
}

/** A point of a stream, with its line: the first and last readings are evidence for what did not happen. */
export interface StreamPoint {
  readonly time: number;
  readonly line: number;
  readonly text: string;
}

/** A span between two readings of a stream that is longer than three times its median spacing. */
export interface Gap {
  readonly before: StreamPoint;
  readonly after: StreamPoint;
}

/** One signal that a poll reads in a stream, and until when it did. */
export interface SignalRead {
  readonly subject: Subject;
  readonly signal: StateSignal;
  /** Its last reading. */
  readonly to: number;
}

/** Rows of one minute that were not understood. */
export interface UnknownRows {
  /** The minute's first instant. */
  readonly from: number;
  readonly count: number;
}

/** What one file says under one unit text about one pair. */
export interface Stream {
  readonly kind: 'reading' | 'entry' | 'note';
  readonly unit: string;
  /** Its pair is '' where none is known. */
  readonly subject: Subject;
  readonly signals: readonly Signal[];
  readonly first: StreamPoint;
  readonly last: StreamPoint;
  /** Median time between two readings of the same parameter, in milliseconds; 0 for entries and notes. */
  readonly spacing: number;
  readonly gaps: readonly Gap[];
  /** What a poll reads; empty for entries and notes. */
  readonly reads: readonly SignalRead[];
  /**
   * The rows of this unit that were not understood, minute by minute in the order of time. Of a file so many minutes are
   * counted that a year of journals has room: of a parameter that no poll explains only the first.
   */
  readonly notUnderstood: readonly UnknownRows[];
}

/** Count, minimum, mean and maximum of a gauge in one five-minute bin that begins at `from`. */
export interface GaugeBin {
  readonly from: number;
  readonly count: number;
  readonly minimum: number;
  readonly mean: number;
  readonly maximum: number;
}

export interface GaugeSeries {
  readonly subject: Subject;
  readonly gauge: Gauge;
  readonly bins: readonly GaugeBin[];
}

export interface RowCounts {
  readonly read: number;
  readonly used: number;
  readonly unchanged: number;
  readonly ignored: number;
  readonly unmatched: number;
  readonly rejected: number;
}

export interface UnmatchedWording {
  readonly wording: string;
  readonly count: number;
  readonly firstLine: number;
}

/** Wording that was not understood, taken apart so that a rule can be drafted from it. */
export interface UnknownWording extends UnmatchedWording {
  readonly kind: 'unit' | 'parameter' | 'value' | 'message';
  /** The unit, parameter or message as the log writes it. */
  readonly name: string;
  /** Of a parameter: some of the values it took, in the order of their coming. */
  readonly values: readonly string[];
}

/** What a column or a parameter of a file became: a key of a row, a signal, or nothing that is used. */
export interface Became {
  readonly name: string;
  readonly meaning: string | null;
}

/** How one file was understood. */
export interface Input {
  readonly file: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly container?: { readonly file: string; readonly sha256: string };
  readonly layout: string;
  /** A WHATWG label, such as `utf-8`. */
  readonly encoding: string;
  /** The character itself; `null` for text lines. */
  readonly delimiter: string | null;
  readonly zone: string;
  readonly rows: RowCounts;
  /** First and last stamp of all rows, those that were not understood included; `null` where none could be read. */
  readonly from: number | null;
  readonly to: number | null;
  readonly units: readonly string[];
  readonly unmatched: readonly UnmatchedWording[];
}

/** Why a file could not be used: its dates can be read both ways and nothing settles it, or anything else. */
export const failureKinds = ['unreadable', 'date-order'] as const;
export type FailureKind = (typeof failureKinds)[number];

/**
 * What a person can say besides in a phrasebook: the order of day and month, the year of stamps without one, the time zone, that
 * clocks are set right, how a file is laid out, what a
 * wording means; or look up: how the files were read. The command has an option or a command for it, the page a place.
 */
export const settings = ['order', 'year', 'zone', 'clocks', 'layout', 'wording', 'reading'] as const;
export type Setting = (typeof settings)[number];

/** Something the reader of a file must be told. `fix` says what to do about it, and `setting` what it can be said by besides. */
export interface Notice {
  readonly id:
    | 'rejected-rows'
    | 'unmatched-wording'
    | 'damaged-tail'
    | 'clock-step'
    | 'clock-fold'
    | 'date-order'
    | 'wrong-half'
    | 'unreadable'
    | 'zone-assumed'
    | 'states-not-listed'
    | 'unused-rules';
  readonly what: string;
  readonly fix: string;
  readonly setting?: Setting;
  readonly count: number;
  readonly from: number | null;
  readonly to: number | null;
  readonly lines: NonEmpty<SourceLine>;
}

/** One file, read: what it is, what changed in it, what it covers, and what was odd. */
export interface ImportedFile {
  readonly input: Input;
  /** Milliseconds that a stamp of this file may stand for beyond itself: 1000 where stamps have no decimals, else 0. */
  readonly resolution: number;
  readonly site: string | null;
  /** The zone that the user or the phrasebook names, where the stamps say their instant themselves: it still tells the site's day. */
  readonly zone?: string;
  readonly streams: readonly Stream[];
  readonly changes: Changes;
  readonly gauges: readonly GaugeSeries[];
  readonly notices: readonly Notice[];
  /** How the file was understood and why, one sentence each. */
  readonly reasons: readonly string[];
  /** The columns of a table in their order; empty for a text. */
  readonly columns: readonly Became[];
  /** What the rows call parameters, in the order of their coming. */
  readonly parameters: readonly Became[];
  readonly unknown: readonly UnknownWording[];
}

// ---- drafts of phrasebooks ------------------------------------------------------------------------------------

/** How a wording is understood, and by what: a rule of the phrasebook, or the built-in words. */
export interface Understanding {
  readonly by: string;
  /** `null`: it is known to mean nothing, or it is a unit. */
  readonly signal: string | null;
  /** Of a unit what it stands for. */
  readonly value: string | null;
  /** Of a parameter: what it is about, where its rule says it. */
  readonly subject?: 'pair' | 'half' | 'active' | 'standby' | undefined;
}

/** A wording, value, parameter or unit as a file has it, understood or not. */
export interface SeenWording {
  readonly kind: UnknownWording['kind'];
  /** The message, parameter or unit as the log writes it where it stands first. */
  readonly name: string;
  /** Of a value the text itself. */
  readonly value: string | null;
  /** Of a parameter: how many different values it took; more than are told apart count as one more. */
  readonly different?: number;
  /** Of a message: a pattern that fits it, its numbers, addresses, ids and quoted names made general. */
  readonly pattern: string;
  readonly count: number;
  readonly first: SourceLine;
  /** The unit that says it there; empty where none is named. */
  readonly unit: string;
  /** It holds a word of redundancy. */
  readonly isOfRedundancy: boolean;
  readonly understood: Understanding | null;
}

/** A key of a phrasebook with what it is given, and why where it is a guess. */
export interface DraftKey {
  readonly key: string;
  readonly value: string | number | Readonly<Record<string, string>>;
  readonly because: string | null;
}

/** How a file may be read: what is known of it, else guessed from its first lines. */
export interface FileDraft {
  readonly file: string;
  /** The keys of a rule for files, without `match`. */
  readonly keys: readonly DraftKey[];
  /** Keys of `time`: those of the stamps of this file. */
  readonly time: readonly DraftKey[];
  /** Its stamps name no zone. */
  readonly isZoneOpen: boolean;
  /** Whether the layout is guessed: no built-in layout fits. */
  readonly isGuess: boolean;
  readonly samples: readonly string[];
  /** Its first stamps, as they are printed; empty where none was found. */
  readonly stamps: readonly string[];
}

/** The first stamps of a file as they would be read: milliseconds UTC, or why one is no time. */
export interface TriedStamps {
  readonly file: string;
  readonly isZoneOpen: boolean;
  readonly stamps: readonly {
    readonly text: string;
    readonly at: number | null;
    readonly problem: string | null;
  }[];
}

/** The start of a table, as it would be read with the columns that were named. */
export interface TriedTable {
  /** The columns in their order; `#3` for one without a name of its own. */
  readonly names: readonly string[];
  readonly headerLine: number;
  /** What stands first in each column. */
  readonly examples: readonly string[];
  /** What each column is read as: a key of the phrasebook, or empty. */
  readonly keys: readonly string[];
  /** What all rows are about, where a rule for the file says so. */
  readonly unit?: string;
  /** What no column says yet; the rows are read once it is empty. */
  readonly missing: readonly ('time' | 'unit' | 'parameter' | 'value')[];
  readonly rows: readonly TriedRow[];
}

/** One row of it: when, of which unit, and what it says, each with what that means; `null` where it is not recognised. */
export interface TriedRow {
  readonly line: number;
  readonly time: number | null;
  readonly unit: string;
  readonly pair: string | null;
  readonly half: string | null;
  readonly says: readonly { readonly text: string; readonly means: string | null }[];
  /** How much more it says. */
  readonly more: number;
  readonly problem: string | null;
}

/** A rule for units that was guessed, and why. */
export interface UnitDraft {
  readonly pattern: string;
  readonly pair: string | null;
  readonly because: string;
  /** False where the built-in words read the units otherwise. */
  readonly isOn: boolean;
}

/** All wordings of some files, and how each file may be read. */
export interface Survey {
  readonly files: readonly FileDraft[];
  readonly units: readonly UnitDraft[];
  /** Those of redundancy first, then the most frequent. */
  readonly wordings: readonly SeenWording[];
}

// ---- timeline -----------------------------------------------------------------------------------------------

export interface TimelineEvent extends Instant {
  readonly pair: string;
  readonly half: string | null;
  readonly signal: Signal;
  readonly value: string | null;
  readonly before: string | null;
  /** How it is known at best: logged, read off polls, or noted by a technician. */
  readonly kind: Change['kind'];
  /** Milliseconds of stamp resolution that durations from here carry: 0 or 1000. */
  readonly resolution: number;
  /** A first reading: the state was already so when the log began. */
  readonly initial: boolean;
  /** A role that no line states: it is reasoned from the role of the other half. */
  readonly concluded: boolean;
  readonly sources: NonEmpty<Source>;
}

/** What one stream covers of a pair, with the file it comes from and the span of all its rows. */
export interface Coverage {
  readonly file: string;
  /** The first file of the journal that it is part of; of any other file its own name. */
  readonly log: string;
  readonly span: Interval;
  readonly stream: Stream;
}

/** A span in which no source that tells of something was read, with the lines before and after it. */
export interface Unobserved extends Interval {
  readonly evidence: NonEmpty<SourceLine>;
}

/** When something was observed, each in the order of time; together they fill the timeline from its first to its last line. */
export interface Observation {
  readonly observed: readonly Interval[];
  readonly unobserved: readonly Unobserved[];
  /** The last reading, or the end of the last journal; `null` where nothing was observed. */
  readonly seenUntil: number | null;
}

export interface HalfGauge {
  readonly half: string | null;
  readonly gauge: Gauge;
  readonly bins: readonly GaugeBin[];
}

/** Everything known of one pair. Events are in the order of time, a cause before its effect. */
export interface PairTimeline {
  readonly pair: string;
  readonly site: string | null;
  /** The time zone of the site; `null` where nothing names one. */
  readonly zone: string | null;
  readonly halves: readonly string[];
  readonly events: readonly TimelineEvent[];
  /** The same events by half and signal, for looking a state up. */
  readonly tracks: ReadonlyMap<string, readonly TimelineEvent[]>;
  readonly gauges: readonly HalfGauge[];
  readonly coverage: NonEmpty<Coverage>;
  /** What was observed of each state, by the same keys as the tracks. */
  readonly observation: ReadonlyMap<string, Observation>;
  /** What was observed of whether the partner is ready; where no source ever tells it, of anything. */
  readonly observed: readonly Interval[];
  readonly unobserved: readonly Unobserved[];
  /** Absences that notes tell and readings speak against; what those notes tell of that work is in the timeline as notes. */
  readonly contradicted: readonly ContradictedNote[];
  readonly from: number;
  readonly to: number;
  readonly newest: NewestStamp;
}

/** The newest stamp that was read, and the file by whose clock it is. */
export interface NewestStamp {
  readonly time: number;
  readonly file: string;
}

/**
 * Notes that have a module surely out of its place for a time: `in-place` while readings find it there, or `elsewhen` while readings
 * show the replacement at another time. One of the two clocks is wrong. The sources are the two notes and the reading that speaks
 * against them.
 */
export interface ContradictedNote extends Interval {
  readonly half: string;
  readonly reason: 'in-place' | 'elsewhen';
  readonly sources: NonEmpty<Source>;
}

// ---- findings -----------------------------------------------------------------------------------------------

export type Severity = 'critical' | 'warning' | 'info';

export interface Finding {
  readonly id: string;
  readonly severity: Severity;
  readonly pair: string | null;
  /** Of a finding about a file: the pairs that the file speaks of. Absent where it may speak of any. */
  readonly concerns?: readonly string[];
  readonly half: string | null;
  readonly from: number | null;
  readonly to: number | null;
  readonly statement: string;
  /** What its advice can be followed by besides, and that advice, which its statement ends with. */
  readonly setting?: Setting;
  readonly advice?: string;
  readonly figures: Readonly<Record<string, number | string | null>>;
  readonly evidence: NonEmpty<SourceLine>;
}

/** A finding of the pair, or of a file that may speak of it. */
export function mayConcern({ pair, concerns }: Finding, wanted: string): boolean {
  return pair === null ? (concerns?.includes(wanted) ?? true) : pair === wanted;
}

export type LimitOutcome = 'within' | 'exceeded' | 'inconclusive' | 'not-observed';

/** A duration with bounds. `seconds` is `null` where nothing could be measured; `outcome` where no limit is set. */
export interface Measure {
  readonly seconds: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** The end was not seen: the true duration is longer than `seconds`. */
  readonly censored: boolean;
  readonly outcome: LimitOutcome | null;
}

/** Total time in several spans, in seconds with bounds. */
export interface Span {
  readonly seconds: number;
  readonly low: number;
  readonly high: number;
  readonly spans: readonly Interval[];
}

export type BringUpCause = 'inserted' | 'restart' | 'reflash';

export interface BringUp {
  readonly pair: string;
  readonly half: string;
  readonly cause: BringUpCause;
  readonly start: Instant;
  /** The start was not logged but read off a change of the reported identity or firmware. */
  readonly startDerived: boolean;
  /** The firmware that the module reported last before it was ready or the watch ended; `null` if it reported none. */
  readonly firmware: string | null;
  readonly model: string | null;
  readonly serial: string | null;
  readonly outcome: 'settled' | 'lost' | 'superseded' | 'unfinished';
  readonly sync: Measure;
  /** To the ready that held: `low` to the first that may have held, `high` to the first that must have. */
  readonly held: Measure;
  readonly settledSeconds: number | null;
  readonly light: Measure;
  /** The ready that held; `null` unless settled. */
  readonly settled: Instant | null;
  /** The earliest instant of a ready that may have held, in milliseconds UTC; `null` if none may have. */
  readonly mayHaveSettledAt: number | null;
  /** The first ready; `null` if there was none. */
  readonly ready: Instant | null;
  /** Until when it was watched. */
  readonly watchedTo: number;
  readonly evidence: NonEmpty<SourceLine>;
  readonly lightEvidence: NonEmpty<SourceLine>;
}

export interface Switchover {
  readonly pair: string;
  readonly at: Instant;
  /** `null`: a log says that the roles were exchanged, and no line says which half had which. */
  readonly fromHalf: string | null;
  readonly toHalf: string | null;
  /** `null`: no command is known, and no source that logs commands of this pair was read just then. */
  readonly commanded: boolean | null;
  /** The partner was ready at the switchover's earliest instant; `null` if not known. */
  readonly partnerReady: boolean | null;
  /** How long it had been ready by then, in seconds; `null` if it was not, or since before the log. */
  readonly readySeconds: number | null;
  readonly firmwareMatched: boolean | null;
  /** Time without an active half, in seconds; `null` where one line tells of both halves. */
  readonly gapSeconds: { readonly low: number | null; readonly high: number | null };
  readonly evidence: NonEmpty<SourceLine>;
}

/** A stretch of one half's line in the staff: what it was between two instants. */
export interface StaffStretch extends Interval {
  readonly half: string;
  readonly drawn: 'active' | 'ready' | 'not-ready' | 'absent' | 'unknown';
}

// ---- verification -------------------------------------------------------------------------------------------

export type CheckStatus = 'pass' | 'fail' | 'inconclusive' | 'not-observed';
export type Verdict = 'verified' | 'not-verified' | 'inconclusive';

export interface CheckResult {
  readonly id: string;
  /** What must hold, in a few words. */
  readonly title: string;
  readonly status: CheckStatus;
  readonly statement: string;
  readonly evidence: NonEmpty<SourceLine>;
}

export interface BeforeAfter {
  readonly before: string | null;
  readonly after: string | null;
}

/** A step of a swap that can be waited for, in their order. Source: design.md, section 5. */
export type ProcedureStepId =
  | 'baseline'
  | 'out'
  | 'in'
  | 'identified'
  | 'reflash'
  | 'synchronising'
  | 'ready'
  | 'steady'
  | 'switchover'
  | 'second-half'
  | 'soak';

/** How a hold point or one of its conditions stands; `stop`: stop and call for support. */
export type HoldStatus = 'met' | 'waiting' | 'stop';

/** Something that must be so before a swap goes on. Its id is a step, or names the state that is asked for. */
export interface Condition {
  readonly id: string;
  readonly half: string | null;
  readonly status: HoldStatus;
  readonly statement: string;
  readonly evidence: NonEmpty<SourceLine>;
}

/** Where a person stops and looks before going on: before a removal, before a switchover, before leaving the cabinet. */
export type HoldPointId = 'removal' | 'switchover' | 'leaving';

/** A hold point with its conditions; it stands at the worst of them. It says what is so, never that anyone may go on. */
export interface HoldPoint {
  readonly id: HoldPointId;
  /** The half that would be removed, or take over; `null` where it is not known, or none is meant. */
  readonly half: string | null;
  readonly status: HoldStatus;
  readonly conditions: NonEmpty<Condition>;
  /** One plain sentence, without instants: those are shown in a zone. */
  readonly statement: string;
}

/** How long a step took in bring-ups of the same model and firmware, in seconds; `null` where too few ended to say. */
export interface ExpectedTime {
  readonly median: number | null;
  readonly p95: number | null;
  readonly n: number;
}

/** What a swap that is under way waits for where the log ends. */
export interface OpenSwap {
  readonly awaits: ProcedureStepId;
  readonly half: string | null;
  /** What is waited for, as the end of a sentence. */
  readonly says: string;
  readonly since: Instant;
  readonly limitSeconds: number;
  /** `stop`: a limit has passed. */
  readonly holdPoint: 'waiting' | 'stop';
  readonly conditions: readonly Condition[];
  /** One plain sentence, without instants: those are shown in a zone. */
  readonly statement: string;
}

/** What one half holds at the newest stamp; `null` where it was never reported. */
export interface HalfAt {
  readonly half: string;
  /** Its place is empty. */
  readonly isOut: boolean;
  readonly role: string | null;
  readonly light: string | null;
  readonly model: string | null;
  readonly serial: string | null;
  readonly firmware: string | null;
}

/** A pair in work, or about to be, as its logs show it at their newest stamp. Source: design.md, section 5, "Around the swap". */
export interface SwapNow {
  readonly pair: string;
  readonly site: string | null;
  /** The newest stamp read of the pair, by the clock that runs. */
  readonly at: number;
  /** The file whose clock that is. */
  readonly clock: string;
  /** A row of the pair follows within so long where its logs go on as they did; `null` where they have no such habit. */
  readonly habitSeconds: number | null;
  /** `null`: nothing is waited for any more. */
  readonly awaits: ProcedureStepId | null;
  readonly half: string | null;
  /** What is waited for, as the end of a sentence; of nothing, what is so. */
  readonly says: string;
  readonly since: Instant | null;
  readonly limitSeconds: number | null;
  readonly expected: ExpectedTime | null;
  /** The next one. */
  readonly holdPoint: HoldPoint;
  readonly halves: readonly HalfAt[];
  /** The last lines that changed something of the pair, the newest last. */
  readonly lines: readonly SourceLine[];
  /** The swap that is under way or over; `null` before its first removal. */
  readonly swap: Swap | null;
}

/** One step of a work sheet: what is done, the hold point before it, and how long it takes here. */
export interface WorkStep {
  readonly id: ProcedureStepId;
  readonly half: string | null;
  /** What is done or waited for, an imperative. */
  readonly title: string;
  readonly limitSeconds: number | null;
  /** `null`: none stands before this step. That of the soak, before leaving, stands after it. */
  readonly holdPoint: HoldPoint | null;
  /** `null`: nobody's bring-ups tell. */
  readonly expected: ExpectedTime | null;
}

export interface SwapHalf {
  readonly half: string;
  readonly removedAt: Instant;
  /** `null`: nothing was put in by the end of the log. */
  readonly insertedAt: Instant | null;
  readonly model: BeforeAfter;
  readonly serial: BeforeAfter;
  /** `found`: the first firmware reported after the insertion. */
  readonly firmware: BeforeAfter & { readonly found: string | null };
}

/** One step of a swap, for the report: what happened when, how long it took, and the check that rests on it. */
export interface Step extends Instant {
  readonly half: string | null;
  readonly statement: string;
  readonly duration: Measure | null;
  readonly checks: readonly string[];
  readonly evidence: NonEmpty<SourceLine>;
}

export interface Swap {
  readonly pair: string;
  readonly site: string | null;
  readonly from: number;
  readonly to: number;
  readonly verdict: Verdict;
  readonly statement: string;
  /** `null` where the swap is over, one way or the other. */
  readonly open: OpenSwap | null;
  readonly halves: NonEmpty<SwapHalf>;
  readonly bringUps: readonly BringUp[];
  readonly switchovers: readonly Switchover[];
  readonly exposure: Span;
  readonly checks: readonly CheckResult[];
  readonly steps: readonly Step[];
  /** Everything else that happened to the pair between `from` and `to`. */
  readonly otherEvents: readonly TimelineEvent[];
  readonly staff: Staff;
}

/** What the staff of a pair is drawn from, between two instants. */
export interface Staff extends Interval {
  /** The limit for a steady light, in seconds: where the flags of the bring-ups stand. */
  readonly limitSeconds: number;
  readonly halves: readonly string[];
  readonly stretches: readonly StaffStretch[];
  readonly lights: readonly (Interval & { readonly half: string; readonly light: 'steady' | 'flashing' })[];
  readonly ticks: readonly (Instant & { readonly half: string | null; readonly word: string })[];
  readonly switchovers: readonly (Instant & {
    readonly fromHalf: string | null;
    readonly toHalf: string | null;
  })[];
  readonly bringUps: readonly (Interval & {
    readonly half: string;
    readonly flag: number;
    readonly late: boolean;
  })[];
  readonly unobserved: readonly Interval[];
  /** Where the pair was not as it should be or was not observed, in the order of time within each kind. */
  readonly states: readonly StaffState[];
}

/** What is not as it should be for a while, or not observed; the gravest first. */
export const staffStateKinds = [
  'two-active',
  'none-active',
  'no-ready-partner',
  'past-limit',
  'flapping',
  'firmware-differs',
  'models-differ',
  'unobserved',
] as const;
export type StaffStateKind = (typeof staffStateKinds)[number];

/** A stretch in which a pair was not as it should be, or not observed. Cut to a window it keeps its whole length in `seconds`. */
export interface StaffState extends Interval {
  readonly kind: StaffStateKind;
  /** The half whose bring-up is past its limit; else `null`: it concerns the pair. */
  readonly half: string | null;
  readonly seconds: number;
  /** How many stretches it stands for. */
  readonly count: number;
  /** Of flapping how often the partner was lost; else 0. */
  readonly losses: number;
  /** It went on when the log ended: it is longer than `seconds`. */
  readonly goesOn: boolean;
}

/** A stretch in which a half reported one value of a state. */
export interface StateSpan extends Interval {
  readonly half: string;
  readonly signal: StateSignal;
  readonly value: string;
}

/** What a person says about the work: printed on the report. */
export interface Job {
  /** Where it was read from; not given where a person typed it. */
  readonly file?: string | undefined;
  readonly workOrder?: string | undefined;
  readonly site?: string | undefined;
  readonly technician?: string | undefined;
  readonly reviewer?: string | undefined;
  readonly plan?: Readonly<Record<string, Readonly<Record<string, PlannedModule>>>> | undefined;
}

export interface PlannedModule {
  readonly model?: string | undefined;
  readonly firmware?: string | undefined;
}

export interface Verification {
  readonly inputs: readonly Input[];
  readonly job: Job | null;
  readonly swaps: readonly Swap[];
  /** Where no swap was found: when a pair had no partner all the same, and no log says what was done; `lasted` is open where it goes on. */
  readonly absences?: readonly {
    readonly pair: string;
    readonly from: Instant;
    readonly lasted: Duration | null;
  }[];
  readonly findings: readonly Finding[];
}

// ---- work sheet ---------------------------------------------------------------------------------------------

/** What a line says of a half where the log ends; `value` is `null` where none does. */
export interface Told {
  readonly value: string | null;
  /** No line says it: it is reasoned from what lines say of the other half. */
  readonly isConcluded: boolean;
  /** Empty where nothing was ever logged. */
  readonly evidence: readonly SourceLine[];
}

/** One half on a work sheet, as of the last line; role and light are not given where they are too old to name the standby. */
export interface SheetHalf {
  readonly half: string;
  readonly role: Told;
  readonly light: Told;
  readonly model: Told;
  readonly serial: Told;
  readonly firmware: Told;
  /** What a new module in this half must come to; `null` where neither the plan nor the other half tells. */
  readonly wanted: {
    readonly firmware: string | null;
    readonly from: 'plan' | 'other-half' | null;
    /** Only where it is planned. */
    readonly model: string | null;
  };
}

/** Why no half is named as standby; the sentence says it in full. */
export const unnamedKinds = ['too-old', 'ahead', 'none', 'several', 'not-logged'] as const;
export type UnnamedKind = (typeof unnamedKinds)[number];

/** Which half was standby where the log of a pair ends, and how long ago that was by the computer's clock. */
export interface StandbyAsOf {
  /** `null`: it is not named, `because` of that. */
  readonly half: string | null;
  readonly because: UnnamedKind | null;
  /** `role`: a line states its role; `other-half`: only that of the other is stated; `light`: no role was ever logged. */
  readonly restsOn: 'role' | 'other-half' | 'light' | null;
  /** The last instant at which what tells it was read. */
  readonly seenAt: Instant;
  /** Negative where that lies ahead of the computer's clock. */
  readonly ageSeconds: number;
  readonly evidence: NonEmpty<SourceLine>;
}

/** Whether a pair is fit for a swap, each reason with its lines; `fit` is `null` where it is not known. */
export interface SheetReadiness {
  readonly fit: boolean | null;
  readonly reasons: readonly { readonly statement: string; readonly evidence: NonEmpty<SourceLine> }[];
  /** The lines of the reasons; of a fit pair those its readiness rests on. */
  readonly evidence: readonly SourceLine[];
}

/** How long a half is expected to leave the pair without a ready partner: the sum of the medians from removal to ready. */
export interface ExpectedExposure {
  readonly half: string | null;
  /** `null`: of one step, or more, no time is known here. */
  readonly seconds: number | null;
  /** The fewest times that one of the medians rests on. */
  readonly n: number;
  /** The steps of which no time is known. */
  readonly unknown: readonly ProcedureStepId[];
}

/** What a person takes to the cabinet before a swap. Source: design.md, section 5, "Around the swap". */
export interface WorkSheet {
  readonly inputs: readonly Input[];
  readonly job: Job | null;
  readonly pair: string;
  readonly site: string | null;
  /** When it was made, by the computer's clock. */
  readonly madeAt: number;
  /** The last line of the pair. */
  readonly asOf: Instant;
  readonly standby: StandbyAsOf;
  readonly halves: readonly SheetHalf[];
  readonly readiness: SheetReadiness;
  readonly exposure: readonly ExpectedExposure[];
  readonly steps: readonly WorkStep[];
  /** Findings of the pair, warning or worse, that reach into the days before `asOf`; the worst first. */
  readonly trouble: readonly Finding[];
  /** Counted losses of the ready partner in those days, the newest first. */
  readonly losses: readonly (Instant & { readonly evidence: NonEmpty<SourceLine> })[];
  /** How many days those are, and how many of them the log covers. */
  readonly troubleDays: { readonly asked: number; readonly covered: number };
  /** What must be known of the files. */
  readonly findings: readonly Finding[];
}

// ---- diagnosis ----------------------------------------------------------------------------------------------

/** How far a standby can get, in order. */
export const stages = [
  'absent',
  'present',
  'starting',
  'identified',
  'firmware-aligned',
  'synchronising',
  'ready',
  'steady',
] as const;
export type Stage = (typeof stages)[number];

/** A stage that an attempt reached: when, and how long it stayed there. The last one stays to the end of the watch. */
export interface StageTime {
  readonly stage: Stage;
  readonly entered: Instant;
  readonly inStage: Measure;
  readonly evidence: NonEmpty<SourceLine>;
}

/**
 * One try of a half to become a ready standby: a bring-up or a further sync start. `loss`: the wait after a loss, where no start
 * of anything was logged.
 */
export interface Attempt {
  readonly pair: string;
  /** `null` where no line says which half it was of. */
  readonly half: string | null;
  readonly cause: BringUpCause | 'sync' | 'loss';
  readonly start: Instant;
  readonly end: Instant;
  /**
   * `ready`: and it held; `lost`: ready, and it surely did not hold; `failed`: a failed sync was logged; `overdue`: surely not
   * ready within its limit; `superseded`: the next start, a reflash, a switchover or a removal came first; `unfinished`: the log
   * ends; `inconclusive`: readiness was not observed closely enough to tell.
   */
  readonly outcome: 'ready' | 'lost' | 'failed' | 'overdue' | 'superseded' | 'unfinished' | 'inconclusive';
  /** From its start to its end; `low` counts no longer than it was surely without a ready partner that held. */
  readonly watched: Duration;
  /** From its sync start to a logged `sync-failed`; `null` without either. */
  readonly abort: Duration | null;
  readonly model: string | null;
  readonly serial: string | null;
  readonly firmware: string | null;
  /** The stages reached, in order; empty if nothing tells them. */
  readonly stages: readonly StageTime[];
  readonly evidence: NonEmpty<SourceLine>;
}

/** How long attempts that became ready stayed in a stage, in seconds: the band to compare with. */
export interface ReferenceBand {
  readonly stage: Stage;
  readonly count: number;
  readonly shortest: number;
  readonly median: number;
  readonly longest: number;
}

/** One thing that speaks for or against a cause. */
export interface Point {
  readonly statement: string;
  readonly evidence: NonEmpty<SourceLine>;
}

export interface RankedCause {
  readonly id: string;
  readonly title: string;
  readonly rank: number;
  /** How strongly the logs speak for it, in decibans (10: ten to one); `null` for too little data. */
  readonly decibans: number | null;
  readonly for: NonEmpty<Point>;
  readonly against: readonly Point[];
  /** What to check next, in words for the person at the cabinet. */
  readonly next: string;
}

/** A cause that the logs do not speak for. */
export interface DoubtedCause {
  readonly id: string;
  readonly title: string;
  readonly against: readonly Point[];
}

/** A cause that could not be judged: what was never logged. */
export interface UnjudgedCause {
  readonly id: string;
  readonly title: string;
  readonly missing: readonly string[];
}

/** Why a pair will not synchronise. */
export interface Diagnosis {
  readonly inputs: readonly Input[];
  readonly pair: string;
  readonly site: string | null;
  /** Why this pair was taken; `null` if it was asked for. */
  readonly chosen: string | null;
  readonly healthy: boolean;
  /** The half that does not come up; `null` where the logs do not say. */
  readonly half: string | null;
  /** Since when there is trouble, and the end of what was read. */
  readonly from: number;
  readonly to: number;
  /** The answer: how it stands and the counts, how far it got, the most likely cause, what to check next. */
  readonly sentences: NonEmpty<Sentence>;
  readonly stage: Stage | null;
  readonly bringUps: readonly BringUp[];
  /** The attempts since the trouble began. */
  readonly attempts: readonly Attempt[];
  readonly reference: { readonly sameModule: boolean; readonly bands: readonly ReferenceBand[] };
  readonly causes: readonly RankedCause[];
  readonly doubted: readonly DoubtedCause[];
  readonly unjudged: readonly UnjudgedCause[];
  readonly staff: Staff;
  readonly findings: readonly Finding[];
}

// ---- attention ----------------------------------------------------------------------------------------------

/** Why a pair needs attention, in the one order of all views: what comes first is looked at first. */
export const attentionKinds = [
  'not-ready',
  'critical',
  'stands-out',
  'flapping',
  'late-light',
  'light-again',
  'not-verified',
  'inconclusive',
  'open',
  'unfit',
  'unknown',
  'stale',
] as const;
export type AttentionKind = (typeof attentionKinds)[number];

export interface AttentionReason {
  readonly kind: AttentionKind;
  /** In words, without instants: those are shown in a zone. */
  readonly said: string;
}

/** How much a pair needs attention: its reasons, the gravest first; none where nothing is wrong. */
export interface Attention {
  readonly pair: string;
  readonly reasons: readonly AttentionReason[];
}

// ---- fleet --------------------------------------------------------------------------------------------------

/** A figure with its limits; `null` where there is not enough data for it. */
export interface Estimate {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** Whether bouts of losses come more and more often over the observed time, by two tests; `null` where there is not enough data. */
export interface LossTrend {
  /** Laplace's figure: above 0 bouts come more and more often; its two-sided chance. */
  readonly laplace: number | null;
  readonly p: number | null;
  /** Shape of a power-law process: above 1 bouts come more and more often; two-sided chance by the military handbook's test. */
  readonly shape: number | null;
  readonly shapeP: number | null;
  /** True where they do by Laplace's test, with all pairs looked at; `null` below 30 observed days. */
  readonly comesCloser: boolean | null;
}

/** One change of the rate of bouts at an unknown instant, more than chance explains with all that were asked. */
export interface RateChange {
  /** The bout from which on, or up to which, the rate is another. */
  readonly time: number;
  readonly before: { readonly bouts: number; readonly observedSeconds: number };
  readonly after: { readonly bouts: number; readonly observedSeconds: number };
  /** Chance of so great a difference at any instant if the rate never changed, adjusted for all that were asked. */
  readonly p: number;
  /** How many bouts there had been by each, from the first observed instant (0) to the last. */
  readonly curve: readonly { readonly time: number; readonly bouts: number }[];
}

/** How one pair did over the time it was observed, against the rest of the fleet. */
export interface PairReview {
  readonly pair: string;
  readonly site: string | null;
  readonly observedSeconds: number;
  /** Counted losses of the ready partner. */
  readonly losses: number;
  /** Losses that follow each other within 12 h count once here: what is compared. */
  readonly bouts: number;
  /** The lines that tell of its newest losses, at most twenty. */
  readonly evidence: readonly SourceLine[];
  /** Bouts in a year of observed time, 365.25 days, with exact 95 % limits; `null` below 30 observed days. */
  readonly ratePerYear: Estimate | null;
  /** The same, drawn towards the rate of all pairs the more, the less was seen of it; `null` below 30 observed days. */
  readonly shrunkenPerYear: number | null;
  /** Its place by that rate, 1 the worst; `null` below 30 observed days. */
  readonly rank: number | null;
  /** Chance of so many bouts, or more, if the pair were like those that do not stand out; `null` where there are none to compare with. */
  readonly p: number | null;
  /** True where the bouts are too many for chance, with all pairs looked at; `null` where nothing was compared. */
  readonly standsOut: boolean | null;
  readonly trend: LossTrend;
  /** The one change of its rate that is more than chance; `null` where none is. */
  readonly change: RateChange | null;
  /** Share of the observed time with a ready partner. */
  readonly availability: number | null;
  readonly flapping: readonly Finding[];
  readonly readiness: {
    /** `null`: nothing speaks against it, but something that must be known was never logged. */
    readonly fit: boolean | null;
    readonly reasons: readonly string[];
    /** The lines of the reasons; of a fit pair those its readiness rests on. At most twenty. */
    readonly evidence: readonly SourceLine[];
  };
}

/** One step of a survival curve: the share of attempts still without a ready partner after so many seconds; superseded ones stay so. */
export interface SurvivalPoint {
  readonly seconds: number;
  readonly surviving: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** The sync times of one group and one cause of bring-up. */
export interface GroupReview {
  readonly group: string;
  readonly cause: BringUpCause;
  readonly attempts: number;
  /** Not seen to end: what would have come is not known. */
  readonly censored: number;
  /** The next start, or a switchover onto the half, came before they were ready: they never were. */
  readonly superseded: number;
  /** Seconds until half of the attempts were ready, and until 95 in 100 were; `value` is `null` where so many never were. */
  readonly median: Estimate;
  readonly p95: Estimate;
  /** At least 95 in 100 attempts are ready by then, with 95 % confidence; `null` where the sample is too small. */
  readonly tolerance9595: number | null;
  /** The sample that such a limit would need. */
  readonly neededFor9595: number;
  readonly survival: readonly SurvivalPoint[];
  readonly trend: SyncTrend | null;
}

/** A log-rank test, with the chance of groups so unlike if they were alike. */
export interface LogRankTest {
  readonly chiSquare: number;
  readonly df: number;
  readonly p: number;
}

/** The groups compared after one cause of bring-up. */
export interface CauseComparison extends LogRankTest {
  readonly cause: BringUpCause;
  /** True where they differ by more than chance explains, with all causes looked at. */
  readonly differs: boolean;
  /** A group that is slower than another by more than chance explains; `null` where none is, or they do not differ. */
  readonly slower: string | null;
  readonly faster: string | null;
}

/**
 * Whether the months' median sync times rise: seconds a year, by the median of slopes, and the two-sided chance with all groups
 * looked at.
 */
export interface SyncTrend {
  readonly months: number;
  readonly secondsPerYear: Estimate;
  readonly p: number;
}

/** One pair in one calendar month, UTC. */
export interface PairMonth {
  readonly pair: string;
  /** The month's first instant. */
  readonly from: number;
  readonly observedSeconds: number;
  readonly losses: number;
  /** Bouts whose first loss was in it. */
  readonly bouts: number;
}

/** The bouts of all pairs while they were in one group: of one firmware, model or site. */
export interface LossGroup {
  /** `mixed`: the two halves differed; `not known`: none said. */
  readonly group: string;
  /** Pairs that were in it for some of their observed time. */
  readonly pairs: number;
  readonly observedSeconds: number;
  readonly losses: number;
  readonly bouts: number;
  /** Many of its bouts came to several pairs at once: they are not independent, and no limits are told. */
  readonly struckTogether: boolean;
  /** Bouts in a year of observed time with exact 95 % limits; `null` below 30 observed days. */
  readonly ratePerYear: Estimate | null;
  /** Mean number of bouts of a pair by so many observed days in the group. */
  readonly curve: readonly MeanCount[];
  readonly change: RateChange | null;
}

/** One step of a mean cumulative function, with robust 95 % limits; `null` where too few pairs were watched so long, or were struck together. */
export interface MeanCount {
  readonly days: number;
  readonly pairs: number;
  readonly mean: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** The rate of bouts in one group over that in another, the higher over the lower. */
export interface LossRatio {
  readonly group: string;
  readonly other: string;
  /** Pairs that were in both, each compared with itself; `null` where there are not two such: all pairs of the one against all of the other. */
  readonly pairsInBoth: number | null;
  readonly ratio: Estimate;
  /** Two-sided chance if the rates were the same, adjusted for all comparisons. */
  readonly p: number;
  /** True where it is more than chance, also without the pair that speaks most for it. */
  readonly differs: boolean;
  /** The pair without which it would be chance; `null` where there is no such pair. */
  readonly byOnePair: string | null;
}

/** How many halves ran a firmware, or were a model, at one instant. */
export interface CensusCount {
  readonly time: number;
  readonly signal: 'firmware' | 'model';
  /** `null`: not known, where the pair was observed. */
  readonly value: string | null;
  readonly halves: number;
}

/** Hours of bring-up that so many swaps are expected to take, with limits; those are `null` where the reflashes are too few. */
export interface ForecastStep {
  readonly swaps: number;
  readonly hours: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** What the last of `steps` says, and what it was learnt from. */
export interface Forecast extends ForecastStep {
  /** Reflashes that settled or failed, and how many of them failed. */
  readonly reflashes: number;
  readonly failed: number;
  /** So many reflashes are needed for limits. */
  readonly needed: number;
  /** How many of a hundred such forecasts hold: 0.9 for 90. */
  readonly confidence: number;
  readonly steps: readonly ForecastStep[];
}

/** A count that is expected, with the limits of a prediction. */
interface Expected {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Bouts of losses that the next year brings, over the pairs that were observed for long enough and for each of them. */
export interface BoutsAhead extends Expected {
  /** What it was learnt from. */
  readonly bouts: number;
  readonly observedSeconds: number;
  readonly pairs: readonly (Expected & { readonly pair: string; readonly bouts: number })[];
}

/** The sync times of one group and cause in their order, smoothed, with the limits of what was usual; in seconds. */
export interface SyncDrift {
  readonly group: string;
  readonly cause: BringUpCause;
  readonly target: number;
  readonly low: number;
  readonly high: number;
  readonly points: readonly {
    readonly pair: string;
    readonly time: number;
    readonly seconds: number;
    readonly average: number;
    readonly isOutside: boolean;
  }[];
}

export interface Fleet {
  readonly inputs: readonly Input[];
  /** The limit for a steady light, in seconds: a line of the pictures of sync times. */
  readonly lightLimitSeconds: number;
  /** What the groups are told apart by. */
  readonly by: 'model' | 'firmware' | 'site';
  /** Those that stand out first, then by rank. */
  readonly pairs: readonly PairReview[];
  /** Where no pair stands out: what share of pairs with so many times the rate of the others would be found to. */
  readonly power: { readonly ratio: number; readonly share: number } | null;
  readonly lossGroups: readonly LossGroup[];
  readonly lossRatios: readonly LossRatio[];
  readonly attempts: readonly BringUp[];
  readonly groups: readonly GroupReview[];
  /**
   * Whether the groups become ready alike, all causes together (for large groups) and one by one (for small ones too); `null` where
   * nothing can be compared.
   */
  readonly logRank: (LogRankTest & { readonly causes: readonly CauseComparison[] }) | null;
  /** How many hours of bring-up the next swaps take; `null` without a reflash to learn from. */
  readonly forecast: Forecast | null;
  /** `null` where no pair was observed for long enough. */
  readonly boutsNextYear: BoutsAhead | null;
  readonly drifts: readonly SyncDrift[];
  /** Every pair in every month in which it was observed: by pair, then month. */
  readonly months: readonly PairMonth[];
  /** Firmware or models that look like one under several names. */
  readonly alike: readonly (readonly string[])[];
  /** What ran where at the start of each month and at the end: by signal, time and value. */
  readonly census: readonly CensusCount[];
  readonly findings: readonly Finding[];
}

/** A fleet review without what it was made from and what it cites: what a terminal shows of it. */
export interface FleetInBrief
  extends Pick<
    Fleet,
    | 'by'
    | 'power'
    | 'lossGroups'
    | 'lossRatios'
    | 'groups'
    | 'logRank'
    | 'forecast'
    | 'boutsNextYear'
    | 'drifts'
    | 'alike'
    | 'findings'
  > {
  readonly inputs: readonly Omit<Input, 'units' | 'unmatched'>[];
  readonly pairs: readonly PairInBrief[];
  /** Of the pairs that stand out at least. */
  readonly months: Fleet['months'];
}

/** A pair without what it cites. */
export type PairInBrief = Omit<PairReview, 'evidence' | 'flapping' | 'readiness'> & {
  readonly readiness: Pick<PairReview['readiness'], 'fit' | 'reasons'>;
};

// ---- figures of a fleet ---------------------------------------------------------------------------------------

/** How far the clock of one file is ahead of the reference's, from the changes both saw. */
export interface ClockOffset {
  readonly file: string;
  readonly reference: string;
  /** Milliseconds that the file is ahead, negative if it is behind; `null`: not measured. */
  readonly ahead: number | null;
  /** How far the differences scatter about it, in milliseconds: nine in ten lie within. */
  readonly spread: number;
  /** How many changes both saw. */
  readonly count: number;
  /** The true offset lies at most this many milliseconds from `ahead`, by what most pairs allow. */
  readonly within: number;
  /** Measured, and beyond its spread and what the spacing of the polls can explain. */
  readonly isBeyond: boolean;
  readonly evidence: NonEmpty<SourceLine>;
}

/** What a file has of one year: how many changes, when the first and the last of them are, and the line that is met first. */
export interface StampYear {
  readonly year: number;
  readonly count: number;
  readonly from: number;
  readonly to: number;
  readonly first: StreamPoint;
}

/** The stamps of a file by their years: those of its changes, and where its streams end; each in the order in which they are met. */
export interface StampYears {
  readonly changes: readonly StampYear[];
  readonly ends: readonly StampYear[];
}

/** Lines of a file that a gap parts from all others in it, and when those others are. */
export interface StrayLines extends Interval {
  readonly strays: NonEmpty<StreamPoint>;
  readonly gap: number;
}

/** What a fleet review needs of one file that was read: all that is told of files, and none of its changes. */
export interface FileFigures {
  readonly input: Input;
  /** The pairs that its streams speak of, each once; `''` where none is known. */
  readonly pairs: readonly string[];
  readonly notices: readonly Notice[];
  readonly stamps: StampYears;
  readonly strays: StrayLines | null;
  readonly offset: ClockOffset | null;
}

/** What could not be read. */
export interface FailureFigures {
  readonly where: string;
  readonly what: string;
  readonly fix: string;
  readonly kind: FailureKind;
  readonly setting?: Setting | undefined;
}

/** The lines of a figure: themselves, or what stands for them. */
type Cited = NonEmpty<SourceLine>;

/** A loss of the ready partner with its lines. */
export interface LossFigures<Lines = Cited> extends Instant {
  readonly kind: 'planned' | 'restart' | 'counted';
  readonly lines: Lines;
}

/** One firmware or model that a half reported, from when on; `initial`: it was so when the log began. */
export interface IdentityStep {
  readonly time: number;
  readonly value: string | null;
  readonly initial: boolean;
}

/** What one half reported of its firmware or model over time. */
export interface IdentityFigures {
  readonly half: string;
  readonly signal: 'firmware' | 'model';
  readonly steps: readonly IdentityStep[];
}

/** Why a pair is not fit for a swap. */
export interface FitnessReason<Lines = Cited> {
  readonly said: string;
  /** Nothing speaks against the pair: what must be known was never logged, or for too short a time. */
  readonly isUnknown?: true | undefined;
  readonly lines: Lines;
}

/** Where a pair stands when its log ends: what its fitness is judged by, for however long it must have been ready. */
export interface FitnessFigures<Lines = Cited> {
  /** Why it has no ready partner, or why that is not known; `null`: it has one. */
  readonly now: FitnessReason<Lines> | null;
  /** What speaks against a swap besides, for however long it was ready. */
  readonly standing: readonly FitnessReason<Lines>[];
  /** Until when it was not observed last, with the lines around that. */
  readonly lastGap: { readonly to: number; readonly lines: Lines } | null;
  /** The first and last line that were read of it. */
  readonly ends: Lines;
  /** What its readiness rests on. */
  readonly ready: Lines;
}

/** A finding with its lines, or with what stands for them. */
export type CitedFinding<Lines = Cited> = Omit<Finding, 'evidence'> & { readonly evidence: Lines };

/** A question of chance that an analyzer asks of a pair: a finding once it holds among all that is asked of all pairs. */
export interface ChanceQuestion<Lines = Cited> {
  /** Chance of an answer as clear as this where there is nothing to find, 0 to 1. */
  readonly p: number;
  /** What is found, its sentence and figures up to that chance; `null` where it could not hold. */
  readonly finding: CitedFinding<Lines> | null;
}

/** What one analyzer says of a pair. */
export interface PairAnswer<Lines = Cited> {
  readonly analyzer: string;
  readonly findings: readonly CitedFinding<Lines>[];
  readonly questions: readonly ChanceQuestion<Lines>[];
}

/** A bring-up as far as it is compared with others. */
export type ComparedBringUp = Pick<
  BringUp,
  | 'pair'
  | 'half'
  | 'cause'
  | 'start'
  | 'firmware'
  | 'model'
  | 'outcome'
  | 'sync'
  | 'held'
  | 'settledSeconds'
  | 'watchedTo'
>;

/** A bring-up with its lines, or with what stands for them. */
export type CitedBringUp<Lines = Cited> = Omit<BringUp, 'evidence' | 'lightEvidence'> & {
  readonly evidence: Lines;
  readonly lightEvidence: Lines;
};

/** Everything that a fleet review needs of one pair. */
export interface PairFigures<Lines = Cited> extends Interval {
  readonly pair: string;
  readonly site: string | null;
  /** When it was observed whether its partner is ready. */
  readonly observed: readonly Interval[];
  readonly losses: readonly LossFigures<Lines>[];
  readonly bouts: readonly { readonly time: number }[];
  /** Share of the observed time with a ready partner. */
  readonly availability: number | null;
  /** By half, firmware before model. */
  readonly identities: readonly IdentityFigures[];
  /** The first instants of the months, UTC, in which anything happened. */
  readonly activeMonths: readonly number[];
  readonly bringUps: readonly CitedBringUp<Lines>[];
  readonly fitness: FitnessFigures<Lines>;
  /** In the order of the analyzers; those that say nothing are left out. */
  readonly answers: readonly PairAnswer<Lines>[];
}

/** What pairs are compared by. */
export type ComparedPair = Omit<PairFigures, 'answers' | 'bringUps'> & {
  readonly bringUps: readonly ComparedBringUp[];
};

/** The figures of a pair with other lines in place of all that they cite, or with what stands for those. */
export function withLines<Own, Other>(
  figures: PairFigures<Own>,
  to: (lines: Own) => Other,
): PairFigures<Other> {
  const { losses, fitness, bringUps, answers } = figures;
  const { now, standing, lastGap, ends, ready } = fitness;
  const reason = (own: FitnessReason<Own>): FitnessReason<Other> => ({ ...own, lines: to(own.lines) });
  const finding = (own: CitedFinding<Own>): CitedFinding<Other> => ({ ...own, evidence: to(own.evidence) });
  return {
    ...figures,
    losses: losses.map((loss) => ({ ...loss, lines: to(loss.lines) })),
    fitness: {
      now: now === null ? null : reason(now),
      standing: standing.map(reason),
      lastGap: lastGap === null ? null : { ...lastGap, lines: to(lastGap.lines) },
      ends: to(ends),
      ready: to(ready),
    },
    bringUps: bringUps.map((own) => ({
      ...own,
      evidence: to(own.evidence),
      lightEvidence: to(own.lightEvidence),
    })),
    answers: answers.map(({ analyzer, findings, questions }) => ({
      analyzer,
      findings: findings.map(finding),
      questions: questions.map(({ p, finding: own }) => ({ p, finding: own === null ? null : finding(own) })),
    })),
  };
}

/** The figures of the pairs that were read together, as those of one site are, and of the files they were read from. */
export interface SiteFigures {
  /** How they were made: for how long a state must last to count as settled, in milliseconds, and which clocks were set right. */
  readonly holdMs: number;
  readonly align: boolean;
  readonly reference: string | null;
  readonly files: readonly FileFigures[];
  readonly failures: readonly FailureFigures[];
  readonly pairs: readonly PairFigures[];
}

// ---- how durations are said ---------------------------------------------------------------------------------

/**
 * A duration in words: `less than 1 s` where it is nothing that a stamp can tell, `4.2 s` below ten seconds, `42 s`, `2 min 22 s`, from an hour `3 h 04 min`, from two days
 * `41 days`. Takes seconds, not negative.
 */
export function sayDuration(seconds: number): string {
  if (seconds < 0.05) return 'less than 1 s';
  if (seconds < 9.95) return `${seconds.toFixed(1)} s`;
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  if (whole < 3600) return `${Math.floor(whole / 60)} min ${twoDigits(whole % 60)} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 2880) return `${Math.floor(minutes / 60)} h ${twoDigits(minutes % 60)} min`;
  return `${Math.floor(minutes / 1440)} days`;
}

/** A duration with its bounds: `2 min 12 s to 2 min 22 s`, `at most 22 s` where it may be nothing; one duration where both are said alike. */
export function sayBounds(low: number, high: number): string {
  const [from, to] = [sayDuration(low), sayDuration(high)];
  if (low < 0.05 && high >= 1) return `at most ${to}`;
  return from === to ? from : `${from} to ${to}`;
}

/**
 * A duration as well as it is known: said alone where both bounds are said alike, `about 1 s` where whole-second stamps leave a
 * second either way, else both bounds.
 */
export function sayAbout({ seconds, low, high }: Duration): string {
  if (sayDuration(low) === sayDuration(high)) return sayDuration(seconds);
  if (high - low > 2) return sayBounds(low, high);
  const whole = Math.round(seconds);
  if (whole < 1) return high <= 1 ? 'less than 1 s' : 'about 1 s';
  return `about ${whole < 10 ? `${whole} s` : sayDuration(whole)}`;
}

/**
 * A share, 0 to 1, in percent: two decimals at most, but near 0 and near 100 as many as it takes to show that it is neither:
 * `50 %`, `37.73 %`, `99.993 %`; `100 %` only for all.
 */
export function sayShare(share: number): string {
  if (share <= 0 || share >= 1) return share <= 0 ? '0 %' : '100 %';
  const short = 100 * Math.min(share, 1 - share);
  // Stamps of milliseconds over a century tell no more than ten decimals.
  const decimals = Math.min(10, Math.max(2, -Math.floor(Math.log10(short))));
  return `${Number((100 * share).toFixed(decimals))} %`;
}

/** How strongly logs speak for something, from decibans: `36 to 1`, from a hundred on by the hundred. */
export function sayOdds(decibans: number): string {
  const odds = 10 ** (decibans / 10);
  return `${odds >= 100 ? Math.round(odds / 100) * 100 : Math.round(odds)} to 1`;
}

/** How often something happened: `once`, `twice`, `three times`, from eleven on in figures. */
export function sayTimes(count: number): string {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${smallNumbers[count] ?? count} times`;
}

const smallNumbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** A limit as a text names it: `five minutes` where it is a small number of whole minutes, else as a duration. Takes seconds. */
export function sayLimit(seconds: number): string {
  const minutes = smallNumbers[seconds / 60];
  return minutes === undefined || seconds < 120 ? sayDuration(seconds) : `${minutes} minutes`;
}

/** The same before its noun: `five-minute limit`. */
export function limitAsAdjective(seconds: number): string {
  return sayLimit(seconds).replace(/ minutes$/, '-minute');
}

/** A chance as a report says it: `p = 0.0031`, and below one in ten thousand `p < 0.0001`. */
export function sayChance(p: number): string {
  return p < 0.0001 ? 'p < 0.0001' : `p = ${Number(p.toPrecision(2))}`;
}

/** Plain order of code units: the same on every computer, no matter what its language. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}

const couples: readonly (readonly [string, string])[] = [
  ['A', 'B'],
  ['a', 'b'],
  ['1', '2'],
  ['0', '1'],
  ['L', 'R'],
  ['l', 'r'],
  ['Left', 'Right'],
  ['left', 'right'],
  ['LEFT', 'RIGHT'],
];

/** What the other half is called of a pair of which only one is named: the next of its kind (common practice, no source). */
export function counterpart(half: string): string {
  const couple = couples.find((both) => both.includes(half));
  return couple?.find((name) => name !== half) ?? (half === '1' ? '2' : '1');
}
