import type { AnswerAlone } from '../src/bundle/documents.ts';
import type { MadeBundle } from '../src/bundle/prepare-bundle.ts';
import type {
  FleetQuestion,
  GrowingFile,
  Lesson,
  LessonPreview,
  PairHealth,
  SaidOfStamps,
} from '../src/pipeline.ts';
import type { ReportFile } from '../src/report/verify-reports.ts';
import type {
  Attention,
  Became,
  ClockOffset,
  Diagnosis,
  Finding,
  Fleet,
  Input,
  Interval,
  Job,
  Notice,
  RowCounts,
  SourceLine,
  Subject,
  Survey,
  SwapNow,
  TriedStamps,
  TriedTable,
  Verification,
} from '../src/vocabulary.ts';

/** A file as the browser gives it, under the name it is told by: with its folder, if it came in one. */
export interface NamedFile {
  readonly name: string;
  readonly file: File;
  /**
   * Of a folder that is or was followed: `grows`: its last line may be half written; `ended`: nobody follows it any more; `gone`: what was
   * read of it is all there is.
   */
  readonly life?: GrowingFile['life'];
}

/** A file of a folder that is followed, given once more. */
export interface FollowedFile extends NamedFile {
  /** It is what was given before, and more; else it is another, or new. */
  readonly hasGrown: boolean;
}

/** A file that was given, with a number of its own: another file, of the same name too, has another. */
export interface GivenFile extends NamedFile {
  readonly id: number;
}

/** A text file that a person edits: a phrasebook. */
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

/** What could not be done: where, why, and what to do. */
export interface Refusal {
  readonly where: string;
  readonly what: string;
  readonly fix: string;
}

/** What was given and not used: a log, a phrasebook or job, or what this program wrote itself. */
export interface NotUsed extends Refusal {
  readonly kind: 'left-out' | 'refused' | 'own-report';
}

/** The phrasebook that a person taught or loaded; `null`: none but the built-in one. */
export interface ChosenPhrasebook {
  readonly text: NamedText | null;
  /** The phrasebooks among the files that it took the place of. */
  readonly instead: readonly string[];
}

/** One file that was given, and what became of it. */
export interface GivenModel {
  readonly id: number;
  readonly name: string;
  /** Bytes. */
  readonly size: number;
  /** `null`: it was not read, and is too large to be hashed for its name alone. */
  readonly sha256: string | null;
  readonly became: string;
  /** The file with the same content that was used in its place. */
  readonly twin: string | null;
}

/** A session that was opened: what it was made of is not here. */
export interface OpenedSession {
  /** The number of its file. */
  readonly id: number;
  readonly file: string;
  /** When it was saved, ISO 8601 UTC. */
  readonly saved: string;
  /** What the page showed then: the hash of its address. */
  readonly page: string;
}

/** How one file was understood. */
export interface FileModel {
  readonly input: Input;
  readonly reasons: readonly string[];
  readonly notices: readonly Notice[];
  readonly units: readonly { readonly unit: string; readonly subject: Subject }[];
  readonly columns: readonly Became[];
  readonly parameters: readonly Became[];
  readonly unobserved: readonly (Interval & { readonly unit: string })[];
}

/** One pair: how it stands, and every swap that the logs show of it, judged with its job. */
export interface PairModel {
  readonly health: PairHealth;
  readonly job: Job | null;
  readonly verification: Verification;
  /** The rows of the files that name it, and how many of them were not recognised or were rejected. */
  readonly rows: Pick<RowCounts, 'read' | 'unmatched' | 'rejected'>;
}

/** Everything the page shows, as plain data. */
export interface SiteModel {
  readonly given: readonly GivenModel[];
  readonly sessions: readonly OpenedSession[];
  readonly files: readonly FileModel[];
  readonly failures: readonly NotUsed[];
  readonly pairs: readonly PairModel[];
  /** The pairs in the order in which they need attention: the same in every view. */
  readonly attention: readonly Attention[];
  /** The pairs in work, and those whose work was over within the last day; the latest step first. */
  readonly now: readonly SwapNow[];
  readonly findings: readonly Finding[];
  readonly offsets: readonly ClockOffset[];
  readonly isAligned: boolean;
  /** The zone that instants are shown in. */
  readonly zone: string;
  readonly from: number | null;
  readonly to: number | null;
  readonly phrasebook: NamedText | null;
}

/** Lines of a file around a cited row, numbered from `first`; the row goes from its line to `last`. */
export interface LinesAround {
  readonly first: number;
  readonly last: number;
  readonly lines: readonly string[];
  /**
   * `same`: the file says what was kept of the row. Else the row as it was kept, alone: `differs`: the file says something else
   * now; `unreadable`: it was moved, changed or deleted; `kept`: there is no file to read it from.
   */
  readonly state: 'same' | 'differs' | 'unreadable' | 'kept';
}

/** All that the files say, and the draft of a phrasebook that the command would write. */
export interface SurveyModel extends Survey {
  readonly draft: string;
}

/** What reading again with some lessons would come to. */
export interface Trial {
  readonly rows: Pick<RowCounts, 'read' | 'unmatched' | 'rejected'>;
  /** What would still not be read, and why. */
  readonly leftOut: readonly Refusal[];
}

/** What the page asks of the worker; each `kind` has its answer. */
export type Question =
  | {
      readonly kind: 'read';
      readonly files: readonly GivenFile[];
      /** `null`: the one among the files. */
      readonly phrasebook: ChosenPhrasebook | null;
      /** `null`: as a session among the files has it, else not. */
      readonly isAligned: boolean | null;
      /** What a person typed, by pair; `null` where the fields were emptied. */
      readonly jobs: Readonly<Record<string, Job | null>>;
      /** Files that are not among these, and may be again. */
      readonly remembered: readonly number[];
    }
  /** All that was read as one file; `page` is the hash of the address, `saved` the present instant. */
  | { readonly kind: 'session'; readonly page: string; readonly saved: number; readonly version: string }
  | { readonly kind: 'align'; readonly isAligned: boolean }
  | { readonly kind: 'judge'; readonly pair: string; readonly job: Job | null }
  /** How a pair stands for a swap, in work or not. */
  | { readonly kind: 'now'; readonly pair: string }
  | { readonly kind: 'diagnose'; readonly pair: string | null }
  | { readonly kind: 'fleet'; readonly question: FleetQuestion }
  | { readonly kind: 'lines'; readonly cited: readonly SourceLine[]; readonly reach: number }
  /** Reads the files once more for all that they say. */
  | { readonly kind: 'survey' }
  /** What each of some lessons would do, with the others. */
  | { readonly kind: 'preview'; readonly lessons: readonly Lesson[] }
  /** Reads all files with some lessons, and keeps the counts alone. */
  | { readonly kind: 'try'; readonly lessons: readonly Lesson[] }
  /** The first rows of a table, as some lessons would have them read. */
  | { readonly kind: 'columns'; readonly file: string; readonly lessons: readonly Lesson[] }
  /** The first stamps of each file, as they would be read. */
  | ({ readonly kind: 'stamps' } & SaidOfStamps)
  | { readonly kind: 'teach'; readonly lessons: readonly Lesson[] }
  /** The bundle of one pair, up to its reports; `place` is its name. */
  | {
      readonly kind: 'bundle';
      readonly command: 'verify' | 'diagnose';
      readonly pair: string;
      readonly isMasked: boolean;
      readonly place: string;
    }
  /** The same bundle, packed with its reports. */
  | { readonly kind: 'pack'; readonly documents: readonly ReportFile[] };

export interface Answers {
  readonly read: SiteModel;
  readonly align: SiteModel;
  readonly judge: PairModel;
  readonly session: { readonly name: string; readonly text: string };
  /** `null` for a pair of which nothing can be said. */
  readonly now: SwapNow | null;
  readonly diagnose: Diagnosis;
  readonly fleet: Fleet;
  readonly lines: readonly LinesAround[];
  readonly survey: SurveyModel;
  readonly preview: readonly LessonPreview[];
  readonly try: Trial;
  /** `null` for a file that is no table. */
  readonly columns: TriedTable | null;
  readonly stamps: readonly TriedStamps[];
  /** The phrasebook's text with the lessons in it. */
  readonly teach: string;
  /** What its reports are of, and the zone that was said. */
  readonly bundle: { readonly answer: AnswerAlone; readonly zone: string | null };
  readonly pack: MadeBundle;
}

/** What is told while files are read. */
export type ReadingNews =
  /** Files that need not be read again. */
  | { readonly kind: 'kept'; readonly files: readonly number[] }
  /** The reading of a file begins; that of the file before has ended. */
  | { readonly kind: 'begin'; readonly file: number }
  /** How many bytes of a file were read so far, of all passes over it, and its rows. */
  | { readonly kind: 'bytes'; readonly file: number; readonly bytes: number; readonly rows: number }
  | { readonly kind: 'failure'; readonly failure: Refusal }
  /** All files were read: what they say is put together. */
  | { readonly kind: 'together' };

/** What the page sends to the worker; what was read is held under the number of its reading until that is closed. */
export type Request =
  | {
      readonly kind: 'ask';
      readonly number: number;
      readonly reading: number;
      readonly question: Question;
    }
  | { readonly kind: 'stop'; readonly number: number }
  | { readonly kind: 'close'; readonly reading: number }
  /** A file as it is now, after `changed`; `null`: there is no other than was given. */
  | { readonly kind: 'file'; readonly id: number; readonly file: File | null };

/** What the worker says; `value` is the answer to the question of that number. */
export type Reply =
  | { readonly kind: 'answer'; readonly number: number; readonly value: Answers[keyof Answers] }
  | { readonly kind: 'refused'; readonly number: number; readonly refusal: Refusal }
  | { readonly kind: 'defect'; readonly number: number; readonly what: string }
  | { readonly kind: 'news'; readonly number: number; readonly news: ReadingNews }
  /** A file cannot be read as it was given any more: it is asked for as it is now. */
  | { readonly kind: 'changed'; readonly file: number };
