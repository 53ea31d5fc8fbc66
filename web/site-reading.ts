import type { LitElement } from 'lit';
import {
  changesSaid,
  filesUndone,
  type How,
  lessonUndone,
  loading,
  nothingToRead,
  removing,
  type ToRead,
  taking,
  teaching,
} from './given-list.ts';
import { askOnLeave, type Leaving } from './leaving.ts';
import type { GivenModel, NamedFile, NamedText, PairModel, SiteModel } from './protocol.ts';
import { beginReading, type ReadingNow, withNews } from './reading-now.ts';
import { focusOn, goBack, type Place, placeNow } from './reading-place.ts';
import { openReader, type Reader, type Reading, Refused, type Session } from './session.ts';

/** What was read, as the page is to show it. */
export interface WasRead {
  readonly site: SiteModel;
  readonly session: Session;
  /** How many lessons can be undone. */
  readonly undo: number;
  /** The last step with files, such as `Removed ro1.csv`, if it can be undone. */
  readonly fileStep: string | null;
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
}

/** All of reading: what was given, what is read now, what is asked, what would be lost. */
export interface SiteReading {
  /** `null`: nothing is read now. */
  now(): ReadingNow | null;
  /** Files that were given while others are there already: to be added, or read in place of them. */
  waiting(): readonly NamedFile[];
  /** What must be said of the files that were given last. */
  said(): readonly string[];
  /** How many files there are. */
  count(): number;
}

interface State {
  reader: Reader | null;
  running: { readonly reading: Reading; readonly toRead: ToRead; now: ReadingNow } | null;
  toRead: ToRead;
  jobs: Readonly<Record<string, PairModel['job']>>;
  waiting: readonly NamedFile[];
  said: readonly string[];
  lastNumber: number;
  place: Place | null;
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
  on<string>('remove-file', (name) => start(work, removing(planned(state), name)));
  on<null>('undo-files', () => start(work, filesUndone(planned(state))));
  on<NamedText | null>('phrasebook', (text) => start(work, loading(planned(state), text, usedNow(work))));
  on<string>('taught', (text) => start(work, teaching(planned(state), text, usedNow(work)), true));
  on<null>('undo', () => start(work, lessonUndone(planned(state))));
  on<PairModel>('pair', ({ health, job }) => typed(work, health.pair, job));
  on<SiteModel>('site', ({ isAligned }) => {
    state.toRead = { ...state.toRead, isAligned };
  });
  on<null>('cancel', () => cancel(work));
  return {
    now: () => state.running?.now ?? null,
    waiting: () => state.waiting,
    said: () => state.said,
    count: () => planned(state).files.length,
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
  const number = (): number => {
    state.lastNumber += 1;
    return state.lastNumber;
  };
  start(work, taking(before, files, how ?? 'replace', number));
}

/** Reads; what is shown stays until that is done. */
function start(work: Work, toRead: ToRead, isTaught = false): void {
  const { element, host, state } = work;
  state.running?.reading.stop();
  state.place ??= placeNow();
  state.said = [];
  state.reader ??= openReader();
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
  state.running = { reading, toRead, now: beginReading(files) };
  element.requestUpdate();
  reading.done.then(
    (read) => {
      if (state.running?.reading === reading) finish(work, { ...read, toRead, isTaught });
    },
    (error: unknown) => {
      if (state.running?.reading !== reading) return;
      state.running = null;
      // A worker with a defect may not answer again.
      if (!(error instanceof Refused)) state.reader = null;
      host.refused(error);
      back(work);
    },
  );
}

interface Finished {
  readonly site: SiteModel;
  readonly session: Session;
  readonly toRead: ToRead;
  /** A person taught something before. */
  readonly isTaught: boolean;
}

function finish(work: Work, { site, session, toRead, isTaught }: Finished): void {
  const { host, state, leaving } = work;
  const before = host.shown();
  const given: readonly GivenModel[] = before?.site.given ?? [];
  const isLeft = toRead.lessonSteps.length > 0;
  const known = new Set(given.map(({ id }) => id));
  const opened = site.sessions.find(({ id }) => !known.has(id));
  Object.assign(state, {
    running: null,
    toRead: { ...toRead, isAligned: site.isAligned },
    said: changesSaid(given, site.given),
  });
  leaving.change((last) => ({ ...last, lessons: isTaught || (isLeft && last.lessons) }));
  const isSame = host.opened({
    site,
    session,
    undo: toRead.lessonSteps.length,
    fileStep: toRead.fileSteps.at(-1)?.says ?? null,
    address: opened?.page ?? null,
  });
  before?.session.close();
  if (isSame) back(work);
  else state.place = null;
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
