import type { LitElement } from 'lit';
import { changesSaid, type ToRead } from './given-list.ts';
import type { Leaving } from './leaving.ts';
import type { GivenModel, NamedFile, PairModel, SiteModel } from './protocol.ts';
import { beginReading, type ReadingNow, withNews } from './reading-now.ts';
import { goBack, type Place, placeNow } from './reading-place.ts';
import { openReader, type Read, type Reader, type Reading, Refused, type Session } from './session.ts';
import type { Marking } from './unfinished-reading.ts';

/** What was read, as the page is to show it. */
export interface WasRead {
  readonly site: SiteModel;
  readonly session: Session;
  /** How many lessons can be undone. */
  readonly undo: number;
  /** The last step with files, such as `Removed ro1.csv`, if it can be undone. */
  readonly fileStep: string | null;
  /** It was read by itself: what a person looks at stays as it is. */
  readonly isQuiet: boolean;
  /** The same files were read again, as they had become: what is new in them came just now. */
  readonly isLive: boolean;
  /** When what was read was given, in milliseconds since 1970 on the clock here. */
  readonly givenAt: number;
  /** The hash that a session which was opened just now had in its address; `null`: the page stays where it is. */
  readonly address: string | null;
}

/** The page as its reading needs it. */
export interface ReadingHost {
  /** What is shown now. */
  shown(): { readonly site: SiteModel; readonly session: Session; readonly pair: string } | null;
  /** Something else was read; true if the view that was open stays. */
  opened(read: WasRead): boolean;
  refused(error: unknown): void;
  /** A file that is followed, as it is at this moment; `null` where it is not there any more. */
  fileNow(name: string): Promise<File | null>;
}

/** All that reading holds. */
export interface ReadingState {
  reader: Reader | null;
  running: Running | null;
  toRead: ToRead;
  jobs: Readonly<Record<string, PairModel['job']>>;
  waiting: readonly NamedFile[];
  said: readonly string[];
  lastNumber: number;
  place: Place | null;
}

/** A reading that goes on; `jobs` are those that it judges by. */
interface Running {
  readonly reading: Reading;
  readonly toRead: ToRead;
  readonly how: HowRead;
  readonly givenAt: number;
  readonly jobs: ReadingState['jobs'];
  now: ReadingNow;
}

/** How files are read: after a person taught something; by itself, while what is shown stays in sight; as what they have become. */
interface HowRead {
  readonly isTaught?: boolean;
  readonly isQuiet?: boolean;
  readonly isLive?: boolean;
}

/** Reading, and the page that it is for. */
export interface Work {
  readonly element: LitElement;
  readonly host: ReadingHost;
  readonly state: ReadingState;
  readonly leaving: Leaving;
  readonly marking: Marking;
}

/** What is read now, or was read last: what comes next is added to it. */
export function planned({ running, toRead }: ReadingState): ToRead {
  return running?.toRead ?? toRead;
}

/** A number that no file had yet. */
export function nextNumber(state: ReadingState): number {
  state.lastNumber += 1;
  return state.lastNumber;
}

/** Reads; what is shown stays until that is done. */
export function start(work: Work, toRead: ToRead, how: HowRead = {}): void {
  const { element, host, state } = work;
  state.running?.reading.stop();
  if (how.isQuiet !== true) {
    state.place ??= placeNow();
    state.said = [];
  }
  state.reader ??= openReader((id) => fileNow(work, id));
  const { files, phrasebook, isAligned, fileSteps } = toRead;
  const { jobs } = state;
  const remembered = fileSteps.at(-1)?.files.map(({ id }) => id) ?? [];
  const reading = state.reader.read(
    { kind: 'read', files, phrasebook, isAligned, jobs, remembered },
    (news) => {
      if (state.running?.reading !== reading) return;
      state.running.now = withNews(state.running.now, news, performance.now());
      element.requestUpdate();
    },
  );
  const running: Running = { reading, toRead, how, givenAt: Date.now(), jobs, now: beginReading(files) };
  state.running = running;
  work.marking.begin(files);
  element.requestUpdate();
  reading.done.then(
    (read) => {
      if (state.running?.reading === reading) finish(work, running, read);
    },
    (error: unknown) => {
      if (state.running?.reading !== reading) return;
      state.running = null;
      work.marking.end();
      // A worker with a defect may not answer again.
      if (!(error instanceof Refused)) state.reader = null;
      host.refused(error);
      if (how.isQuiet !== true) back(work);
    },
  );
}

/** The file of a number, where it is of a folder that is followed. */
async function fileNow({ host, state }: Work, id: number): Promise<File | null> {
  const name = planned(state).files.find((file) => file.id === id)?.name;
  return name === undefined ? null : await host.fileNow(name);
}

function finish(work: Work, { toRead, how, givenAt, jobs }: Running, { site, session }: Read): void {
  const { host, state, leaving } = work;
  if (how.isQuiet === true && jobs !== state.jobs) {
    // A person wrote meanwhile: what was read is known, and is judged once more.
    session.close();
    start(work, toRead, how);
    return;
  }
  const { isTaught = false, isQuiet = false, isLive = false } = how;
  const before = host.shown();
  const given: readonly GivenModel[] = before?.site.given ?? [];
  const isLeft = toRead.lessonSteps.length > 0;
  const known = new Set(given.map(({ id }) => id));
  const opened = site.sessions.find(({ id }) => !known.has(id));
  Object.assign(state, { running: null, toRead: { ...toRead, isAligned: site.isAligned } });
  if (!isQuiet) state.said = changesSaid(given, site.given);
  leaving.change((last) => ({ ...last, lessons: isTaught || (isLeft && last.lessons) }));
  const isSame = host.opened({
    site,
    session,
    undo: toRead.lessonSteps.length,
    fileStep: toRead.fileSteps.at(-1)?.says ?? null,
    address: isQuiet ? null : (opened?.page ?? null),
    isQuiet,
    isLive,
    givenAt,
  });
  work.marking.end();
  if (isQuiet) before?.session.retire();
  else before?.session.close();
  if (isSame && !isQuiet) back(work);
  else if (!isSame) state.place = null;
}

/** Ends the reading that goes on: what was shown is shown again. */
export function cancel(work: Work): void {
  const { state } = work;
  state.running?.reading.stop();
  state.running = null;
  work.marking.end();
  back(work);
}

/** Shows what was shown before the reading, where it was. */
function back({ element, state }: Work): void {
  const { place } = state;
  state.place = null;
  element.requestUpdate();
  if (place !== null) void goBack(element, place);
}
