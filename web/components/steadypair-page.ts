import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { SourceLine } from '../../src/vocabulary.ts';
import { type Evidence, evidenceOf } from '../evidence.ts';
import { takeDrops } from '../file-drop.ts';
import { type Chosen, firstChosen, firstView, type PageState } from '../page-state.ts';
import type { LinesAround, PairModel, Refusal, SiteModel } from '../protocol.ts';
import { refusalOf } from '../session.ts';
import { siteReading, type WasRead } from '../site-reading.ts';
import { views } from '../views.ts';
import { addOrReplace } from './add-or-replace.ts';
import { notKnown } from './not-known.ts';
import { PageElement } from './page-element.ts';
import './reading-progress.ts';
import { sessionNote } from './session-note.ts';
import './start-view.ts';

/** Everything: what was read, which view shows it, the margin. Its children ask for changes by events. */
export class SteadypairPage extends PageElement {
  static override properties = {
    state: { state: true },
    isOver: { state: true },
    problem: { state: true },
    view: { state: true },
  };
  declare state: PageState | null;
  /** Files are dragged over the window. */
  declare isOver: boolean;
  declare problem: Refusal | null;
  declare view: string;
  private readonly evidence: Evidence = evidenceOf(this, (cited, reach) => this.readLines(cited, reach));
  /** The section that the view to be opened shows first; empty: its begin. */
  private section = '';
  private readonly reading = siteReading(this, {
    shown: () => (this.state === null ? null : { ...this.state, pair: this.state.chosen.pair }),
    opened: (read) => this.opened(read),
    refused: (error) => this.tell(error),
  });

  constructor() {
    super();
    this.state = null;
    this.isOver = false;
    this.problem = null;
    this.view = '';
    this.addEventListener('site', (event) => this.show(detailOf<SiteModel>(event)));
    this.addEventListener('pair', (event) => this.showPair(detailOf<PairModel>(event)));
    this.addEventListener('choose', (event) => this.choose(detailOf<Chosen>(event)));
    this.addEventListener('mend', (event) => this.mend(detailOf<string>(event)));
    this.addEventListener('problem', (event) => this.tell(detailOf<unknown>(event)));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    takeDrops({
      over: (isOver) => {
        this.isOver = isOver;
      },
      dropped: (files) => this.dispatchEvent(new CustomEvent('files', { detail: { files } })),
      refused: (problem) => {
        this.problem = problem;
      },
    });
    window.addEventListener('hashchange', () => this.follow());
    window.addEventListener('unhandledrejection', (event) => this.tell(event.reason));
  }

  override render(): TemplateResult {
    return html`${this.header()}
      <div class=${this.hasMargin() ? 'columns' : 'columns alone'}>
        <main tabindex="-1">${this.said()}${this.body()}</main>
        ${this.hasMargin() ? this.evidence.margin() : nothing}
      </div>`;
  }

  private hasMargin(): boolean {
    return this.state !== null && this.reading.now() === null && this.view !== '';
  }

  private readLines(cited: readonly SourceLine[], reach: number): Promise<readonly LinesAround[]> {
    if (this.state === null) throw new RangeError('Nothing was read yet.');
    return this.state.session.ask<'lines'>({ kind: 'lines', cited, reach });
  }

  private header(): TemplateResult {
    const { state } = this;
    const link = (id: string, title: string): TemplateResult =>
      html`<li><a href=${`#${id}`} aria-current=${this.view === id ? 'page' : 'false'}>${title}</a></li>`;
    return html`<header>
      <a class="name" href="#">Steadypair</a>
      ${
        state === null
          ? nothing
          : html`<nav aria-label="Views"><ul>${views.map((v) => link(v.id, v.title))}</ul></nav>
            <p class="period">${periodOf(state.site)}</p>`
      }
    </header>`;
  }

  private said(): TemplateResult {
    const { problem, reading } = this;
    const count = reading.count();
    const waiting = reading.waiting();
    return html`${this.isOver ? dropLine(count) : nothing}
      ${problem === null ? nothing : html`<p class="problem" role="alert"><span class="fail">Not done:</span> ${terminal(`${problem.where}: ${problem.what} ${problem.fix}`)}</p>`}
      ${waiting.length === 0 ? nothing : addOrReplace(waiting, count)}
      ${reading.said().map((line) => html`<p class="second no-print" role="status">${terminal(line)}</p>`)}`;
  }

  /** What was there stays, out of sight, until another reading is done: what was typed in it is not lost. */
  private body(): TemplateResult {
    const now = this.reading.now();
    const view = views.find((v) => v.id === this.view);
    return html`${now === null ? nothing : html`<reading-progress .now=${now}></reading-progress>`}
      <div class="shown" ?hidden=${now !== null}>
        ${
          this.state === null || view === undefined
            ? html`<start-view></start-view>`
            : html`${sessionNote(this.state.site)}${view.id === 'sources' ? nothing : notKnown(this.state.site)}${view.render(this.state)}`
        }
      </div>`;
  }

  /** True if the view that was open stays. */
  private opened({ site, session, undo, fileStep, address }: WasRead): boolean {
    this.problem = null;
    // What was cited is a line of the last reading.
    this.evidence.clear();
    const chosen = firstChosen(site, this.state?.chosen ?? null);
    const isFirst = this.state === null || this.view === '';
    this.state = { site, session, chosen, undo, fileStep };
    if (address !== null) history.replaceState(null, '', address === '' ? '#' : address);
    if (address !== null) this.follow();
    else if (isFirst) this.open(firstView(site));
    return !isFirst && address === null;
  }

  private show(site: SiteModel): void {
    if (this.state === null) return;
    // Other clocks can make another number of swaps.
    this.state = { ...this.state, site, chosen: firstChosen(site, this.state.chosen) };
  }

  private showPair(model: PairModel): void {
    if (this.state === null) return;
    const { site } = this.state;
    const pairs = site.pairs.map((p) =>
      p.health.pair === model.health.pair ? { ...model, health: p.health } : p,
    );
    this.show({ ...site, pairs });
  }

  private choose(chosen: Chosen): void {
    if (this.state === null) return;
    this.state = { ...this.state, chosen };
    // Evidence of another swap would stand beside this one.
    this.evidence.clear();
    this.open('swap');
  }

  /** Opens a section of Sources. */
  private mend(section: string): void {
    this.section = section;
    this.open('sources');
  }

  private open(id: string): void {
    if (location.hash === `#${id}`) this.follow();
    else location.hash = id;
  }

  /** The address names the view, so that back and forward work. */
  private follow(): void {
    const [id = ''] = location.hash.slice(1).split('?');
    const next = views.some((v) => v.id === id) && this.state !== null ? id : '';
    if (next !== this.view) this.evidence.clear();
    this.view = next;
    window.scrollTo(0, 0);
    const { section } = this;
    this.section = '';
    void this.updateComplete.then(() => (section === '' ? this.focusOn('main') : this.showSection(section)));
  }

  private async showSection(id: string): Promise<void> {
    // The view draws itself after the page.
    await new Promise((resolve) => requestAnimationFrame(resolve));
    this.querySelector(`#${id}`)?.scrollIntoView();
    this.focusOn(`#${id}`);
  }

  private focusOn(selector: string): void {
    const found = this.querySelector(selector);
    if (found instanceof HTMLElement) found.focus({ preventScroll: true });
  }

  private tell(error: unknown): void {
    this.problem = refusalOf(error);
  }
}

function detailOf<T>(event: Event): T {
  if (!(event instanceof CustomEvent)) throw new TypeError(`${event.type} carries nothing.`);
  return event.detail;
}

function dropLine(count: number): TemplateResult {
  return html`<p class="drop-line no-print">${count === 0 ? 'Drop to read these files' : 'Drop to add these files'}</p>`;
}

function periodOf({ from, to, zone }: SiteModel): string {
  if (from === null || to === null) return 'No instant was read.';
  return `${sayInstant(from, zone)} to ${sayInstant(to, zone)}, all times in ${zone}`;
}

customElements.define('steadypair-page', SteadypairPage);
