import type { LitElement } from 'lit';
import {
  filesUndone,
  followingOn,
  type How,
  lessonUndone,
  livesNow,
  loading,
  nothingToRead,
  readingAgain,
  removing,
  taking,
  teaching,
} from './given-list.ts';
import { askOnLeave } from './leaving.ts';
import type { FollowedFile, GivenFile, NamedFile, NamedText, PairModel, SiteModel } from './protocol.ts';
import { changedSince, sayChanged } from './read-again.ts';
import type { ReadingNow } from './reading-now.ts';
import { focusOn } from './reading-place.ts';
import {
  cancel,
  nextNumber,
  planned,
  type ReadingHost,
  type ReadingState,
  start,
  type Work,
} from './reading-work.ts';
import { markReading, sayUnfinished, unfinishedReadings } from './unfinished-reading.ts';

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

/** Listens to what the elements of `element` ask of the files and the phrasebook, and reads. */
export function siteReading(element: LitElement, host: ReadingHost): SiteReading {
  const state: ReadingState = {
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
  const work: Work = { element, host, state, leaving, marking: markReading() };
  void tellUnfinished(work);
  const on: Listen = (name, act) =>
    element.addEventListener(name, (event) => event instanceof CustomEvent && act(event.detail));
  on<Given>('files', (given) => give(work, given));
  listenToFollowed(work, on);
  on<null>('read-again', () => void readAgain(work));
  on<string>('remove-file', (name) => start(work, removing(planned(state), name)));
  on<null>('undo-files', () => start(work, filesUndone(planned(state))));
  on<NamedText | null>('phrasebook', (text) => start(work, loading(planned(state), text, usedNow(work))));
  on<string>('taught', (text) =>
    start(work, teaching(planned(state), text, usedNow(work)), { isTaught: true }),
  );
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

/** Says of what the page was reading when its tab ended; who reads meanwhile sees what became of that. */
async function tellUnfinished({ element, state }: Work): Promise<void> {
  const found = await unfinishedReadings();
  if (state.running !== null || found.length === 0) return;
  state.said = found.map(sayUnfinished);
  element.requestUpdate();
}

/** Acts on what an event of that name carries. */
type Listen = <T>(name: string, act: (detail: T) => void) => void;

/** Reads by itself what becomes of a folder that is followed. */
function listenToFollowed(work: Work, on: Listen): void {
  const { state } = work;
  on<{ readonly files: readonly FollowedFile[] }>('followed-files', ({ files }) => {
    const toRead = followingOn(planned(state), files, () => nextNumber(state));
    start(work, toRead, { isQuiet: true, isLive: true });
  });
  on<readonly string[]>('followed-gone', (gone) => {
    const lives = livesNow(planned(state), (name) => (gone.includes(name) ? 'gone' : 'grows'));
    start(work, lives, { isQuiet: true, isLive: true });
  });
  on<null>('followed-end', () =>
    start(
      work,
      livesNow(planned(state), () => 'ended'),
      { isQuiet: true },
    ),
  );
}

/** What the elements give: without a way to take them a person is asked where there are others. */
interface Given {
  readonly files: readonly NamedFile[];
  readonly how?: How | 'not';
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

/** Reads all files once more, unless the browser gives some only as they were when they were chosen: then that is said. */
async function readAgain(work: Work): Promise<void> {
  const { element, state } = work;
  const changed = await changedSince(planned(state).files);
  if (changed.length === 0)
    start(
      work,
      readingAgain(planned(state), () => nextNumber(state)),
      { isLive: true },
    );
  else {
    state.said = [sayChanged(changed)];
    element.requestUpdate();
  }
}

function typed({ state, leaving }: Work, pair: string, job: PairModel['job']): void {
  state.jobs = { ...state.jobs, [pair]: job };
  leaving.change((before) => ({ ...before, jobs: new Set([...before.jobs, pair]) }));
}
