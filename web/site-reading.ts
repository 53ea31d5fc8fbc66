import type { LitElement } from 'lit';
import {
  changesSaid,
  filesUndone,
  followingOn,
  type How,
  lessonUndone,
  loading,
  nothingToRead,
  readingAgain,
  removing,
  type ToRead,
  taking,
  teaching,
} from './given-list.ts';
import { askOnLeave, type Leaving } from './leaving.ts';
import type { GivenFile, GivenModel, NamedFile, NamedText, PairModel, SiteModel } from './protocol.ts';
import { changedSince, sayChanged } from './read-again.ts';
import { beginReading, type ReadingNow, withNews } from './reading-now.ts';
import { focusOn, goBack, type Place, placeNow } from './reading-place.ts';
import { openReader, type Read, type Reader, type Reading, Refused, type Session } from './session.ts';

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

/** All of reading: what was given, what is read now, what is asked, what would be lost. */
export interface SiteReading {
  /** `null`: nothing is read now. */
  now(): ReadingNow | null;
  /** Files that were given while others are there already: to be added, or read in place of them. */
  waiting(): readonly NamedFile[];
  /** What must be said of the files that were given last. */
  said(): readonly string[];
  /** The files there are. */
  files(): readonly GivenFile[];
  /** Files are read, or a person is asked about some. */
  isBusy(): boolean;
}

interface State {
  reader: Reader | null;
  running: Running | null;
  toRead: ToRead;
  jobs: Readonly<Record<string, PairModel['job']>>;
  waiting: readonly NamedFile[];
  said: readonly string[];
  lastNumber: number;
  place: Place | null;
}

interface Running {
  readonly reading: Reading;
  readonly toRead: ToRead;
  readonly how: HowRead;
  readonly givenAt: number;
  now: ReadingNow;
}

/** How files are read: after a person taught something; by itself, while what is shown stays in sight. */
interface HowRead {
  readonly isTaught?: boolean;
  readonly isQuiet?: boolean;
  readonly isLive?: boolean;
}

/** Listens to what the elements of `element` ask of the files and the phrasebook, and reads. */
export function siteReading(element: LitElement, host: ReadingHost): SiteReading {
  const state: State = {
    reader: null,
    running: null,
    toRead: nothingToRead,
    jobs: {},
    waiting: [],
    said: [],
    lastNumber: 0,
    place: null,
  };
  const leaving = askOnLeave(() => ({
    pair: host.shown()?.pair ?? '',
    phrasebook: host.shown()?.site.phrasebook?.file.split('/').at(-1) ?? null,
  }));
  const work: Work = { element, host, state, leaving };
  const on = <T>(name: string, act: (detail: T) => void): void =>
    element.addEventListener(name, (event) => event instanceof CustomEvent && act(event.detail));
  on<Given>('files', (given) => give(work, given));
  on<Given>('followed-files', ({ files }) => {
    start(work, followingOn(planned(state), files, () => nextNumber(state)), {
      isQuiet: true,
      isLive: true,
    });
  });
  on<null>('read-again', () => void readAgain(work));
  on<string>('remove-file', (name) => start(work, removing(planned(state), name)));
  on<null>('undo-files', () => start(work, filesUndone(planned(state))));
  on<NamedText | null>('phrasebook', (text) => start(work, loading(planned(state), text, usedNow(work))));
  on<string>('taught', (text) => start(work, teaching(planned(state), text, usedNow(work)), { isTaught: true }));
  on<null>('undo', () => start(work, lessonUndone(planned(state))));
  on<PairModel>('pair', ({ health, job }) => typed(work, health.pair, job));
  on<SiteModel>('site', ({ isAligned }) => {
    state.toRead = { ...state.toRead, isAligned };
  });
  on<null>('cancel', () => cancel(work));
  return {
    now: () => (state.running?.how.isQuiet === true ? null : (state.running?.now ?? null)),
    waiting: () => state.waiting,
    said: () => state.said,
    files: () => planned(state).files,
    isBusy: () => state.running !== null || state.waiting.length > 0,
  };
}

/** What the elements give: without a way to take them a person is asked where there are others. */
interface Given {
  readonly files: readonly NamedFile[];
  readonly how?: How | 'not';
}

interface Work {
  readonly element: LitElement;
  readonly host: ReadingHost;
  readonly state: State;
  readonly leaving: Leaving;
}

/** What is read now, or was read last: what comes next is added to it. */
function planned({ running, toRead }: State): ToRead {
  return running?.toRead ?? toRead;
}

function usedNow({ host }: Work): NamedText | null {
  return host.shown()?.site.phrasebook ?? null;
}

function give(work: Work, { files, how }: Given): void {
  const { element, state } = work;
  const before = planned(state);
  const isFirst = before.files.length === 0;
  state.waiting = how === undefined && !isFirst ? files : [];
  element.requestUpdate();
  if (state.waiting.length > 0) void element.updateComplete.then(() => focusOn(element, '#add-files'));
  if (how === 'not' || state.waiting.length > 0) return;
  start(
    work,
    taking(before, files, how ?? 'replace', () => nextNumber(state)),
  );
}

function nextNumber(state: State): number {
  state.lastNumber += 1;
  return state.lastNumber;
}

/** Reads; what is shown stays until that is done. */
function start(work: Work, toRead: ToRead, how: HowRead = {}): void {
  const { element, host, state } = work;
  state.running?.reading.stop();
  if (how.isQuiet !== true) {
    state.place ??= placeNow();
    state.said = [];
  }
  state.reader ??= openReader((id) => fileNow(work, id));
  const { files, phrasebook, isAligned, fileSteps } = toRead;
  const remembered = fileSteps.at(-1)?.files.map(({ id }) => id) ?? [];
  const reading = state.reader.read(
    { kind: 'read', files, phrasebook, isAligned, jobs: state.jobs, remembered },
    (news) => {
      if (state.running?.reading !== reading) return;
      state.running.now = withNews(state.running.now, news, performance.now());
      element.requestUpdate();
    },
  );
  const running: Running = { reading, toRead, how, givenAt: Date.now(), now: beginReading(files) };
  state.running = running;
  element.requestUpdate();
  reading.done.then(
    (read) => {
      if (state.running?.reading === reading) finish(work, running, read);
    },
    (error: unknown) => {
      if (state.running?.reading !== reading) return;
      state.running = null;
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

function finish(work: Work, { toRead, how, givenAt }: Running, { site, session }: Read): void {
  const { host, state, leaving } = work;
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
  if (isQuiet) before?.session.retire();
  else before?.session.close();
  if (isSame && !isQuiet) back(work);
  else if (!isSame) state.place = null;
}

/** Reads all files once more, unless the browser gives some only as they were when they were chosen: then that is said. */
async function readAgain(work: Work): Promise<void> {
  const { element, state } = work;
  const changed = await changedSince(planned(state).files);
  if (changed.length === 0)
    start(work, readingAgain(planned(state), () => nextNumber(state)), { isLive: true });
  else {
    state.said = [sayChanged(changed)];
    element.requestUpdate();
  }
}

function cancel(work: Work): void {
  const { state } = work;
  state.running?.reading.stop();
  state.running = null;
  back(work);
}

/** Shows what was shown before the reading, where it was. */
function back({ element, state }: Work): void {
  const { place } = state;
  state.place = null;
  element.requestUpdate();
  if (place !== null) void goBack(element, place);
}

function typed({ state, leaving }: Work, pair: string, job: PairModel['job']): void {
  state.jobs = { ...state.jobs, [pair]: job };
  leaving.change((before) => ({ ...before, jobs: new Set([...before.jobs, pair]) }));
}
