import { PaperReport } from './components/paper-report.ts';

/** What a view puts on paper: the same object as long as it shows the same, and how its report is written. */
export interface Paper {
  readonly of: unknown;
  /** The report as the whole HTML file that is saved. */
  write(): Promise<string>;
}

/** Says what is printed instead of the view: its report; `null`: the view itself. To be said each time the view was drawn. */
export function putOnPaper(from: EventTarget, paper: Paper | null): void {
  from.dispatchEvent(new CustomEvent('paper', { bubbles: true, detail: paper }));
}

/** Prints what is shown, once its report is written. */
export function print(from: EventTarget): void {
  from.dispatchEvent(new CustomEvent('print-report', { bubbles: true }));
}

interface State {
  from: Element | null;
  paper: Paper | null;
  written: Promise<void> | null;
}

/** A report is written only once its view has been looked at for so long, and as late as this where the browser never rests. */
const [restMs, longestWaitMs] = [400, 1500];

/**
 * Keeps the report of the view that is shown ready to be printed, beside `host`: it is written as soon as the browser has
 * nothing else to do. A view that puts nothing on paper prints as it is.
 */
export function keepPaper(host: HTMLElement): void {
  const sheet = new PaperReport();
  const state: State = { from: null, paper: null, written: null };
  const isShown = (): boolean => state.from?.isConnected === true;
  const write = (): Promise<void> => {
    const { paper } = state;
    if (paper === null || !isShown()) return Promise.resolve();
    state.written ??= paper.write().then((html) => {
      // Another view, pair or job may have taken its place meanwhile.
      if (state.paper === paper) sheet.show(html);
    });
    return state.written;
  };
  const tell = (detail: unknown): void => {
    host.dispatchEvent(new CustomEvent('problem', { detail }));
  };
  const printReport = (): void => {
    write().then(() => window.print(), tell);
  };
  host.addEventListener('paper', (event) => {
    if (!(event instanceof CustomEvent) || !(event.target instanceof Element)) return;
    const paper: Paper | null = event.detail;
    if (state.paper?.of === paper?.of && state.from === event.target) return;
    Object.assign(state, { from: event.target, paper, written: null });
    sheet.show(null);
    const isWanted = (): boolean => state.paper === paper && state.written === null;
    if (paper !== null) whenIdle(() => isWanted() && write().catch(tell));
  });
  host.addEventListener('print-report', printReport);
  window.addEventListener('beforeprint', () => isShown() || sheet.show(null));
  document.addEventListener('keydown', (event) => {
    const isPrint = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'p';
    // The browser's own way to print waits for nothing.
    if (!isPrint || !isShown()) return;
    event.preventDefault();
    printReport();
  });
  document.body.append(sheet);
}

function whenIdle(act: () => void): void {
  setTimeout(() => {
    if ('requestIdleCallback' in window) requestIdleCallback(act, { timeout: longestWaitMs });
    else act();
  }, restMs);
}
