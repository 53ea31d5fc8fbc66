import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { SourceLine } from '../../src/vocabulary.ts';
import { type Follower, followAddress } from '../address-follow.ts';
import { type Evidence, evidenceOf } from '../evidence.ts';
import { takeDrops } from '../file-drop.ts';
import { type Following, followFolders } from '../following.ts';
import { arrivalsAfter, noArrivals } from '../log-arrivals.ts';
import { workKeys } from '../page-keys.ts';
import { firstChosen, type PageState } from '../page-state.ts';
import { keepPaper } from '../paper.ts';
import type { LinesAround, PairModel, Refusal, SiteModel } from '../protocol.ts';
import type { WasRead } from '../reading-work.ts';
import { refusalOf } from '../session.ts';
import { type SiteReading, siteReading } from '../site-reading.ts';
import { views } from '../views.ts';
import { addOrReplace } from './add-or-replace.ts';
import { KeysHelp } from './keys-help.ts';
import { notKnown } from './not-known.ts';
import { PageElement } from './page-element.ts';
import './reading-progress.ts';
import { sessionNote } from './session-note.ts';
import './start-view.ts';
import './about-page.ts';

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
  private readonly address: Follower = followAddress(this, () => this.evidence.clear());
  private readonly following: Following = followFolders(this, {
    isBusy: () => this.reading.isBusy(),
    isEmpty: () => this.state === null,
    changed: () => this.showFollowed(),
  });
  private readonly reading: SiteReading = siteReading(this, {
    shown: () => (this.state === null ? null : { ...this.state, pair: this.state.chosen.pair }),
    opened: (read) => this.opened(read),
    refused: (error) => this.tell(error),
    fileNow: (name) => this.following.fileNow(name),
  });

  constructor() {
    super();
    this.state = null;
    this.isOver = false;
    this.problem = null;
    this.view = '';
    this.addEventListener('site', (event) => this.show(detailOf<SiteModel>(event)));
    this.addEventListener('pair', (event) => this.showPair(detailOf<PairModel>(event)));
    this.addEventListener('mend', (event) => this.address.open('sources', detailOf<string>(event)));
    this.addEventListener('problem', (event) => this.tell(detailOf<unknown>(event)));
    keepPaper(this);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    workKeys(this, {
      open: (view) => this.state !== null && this.address.open(view),
      help: () => this.help(),
      isOn: () => this.hasKeys(),
    });
    takeDrops({
      over: (isOver) => {
        this.isOver = isOver;
      },
      dropped: (files) => this.dispatchEvent(new CustomEvent('files', { detail: { files } })),
      refused: (problem) => {
        this.problem = problem;
      },
    });
    window.addEventListener('unhandledrejection', (event) => this.tell(event.reason));
  }

  override render(): TemplateResult {
    return html`<a class="skip" href="#content">Skip to content</a>${this.header()}
      <div class=${this.hasMargin() ? 'columns' : 'columns alone'}>
        <main id="content" tabindex="-1">${this.said()}${this.body()}<about-page .state=${this.state}></about-page></main>
        ${this.hasMargin() ? this.evidence.margin() : nothing}
      </div>
      <keys-help .isOn=${this.hasKeys()}></keys-help>`;
  }

  private hasKeys(): boolean {
    return this.state?.inputs.keys !== 'off';
  }

  private help(): void {
    const found = this.querySelector('keys-help');
    if (found instanceof KeysHelp) found.open();
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
            <p class="period">${periodOf(state.site)} <button type="button" class="link no-print" id="keys" @click=${() => this.help()}>Keys</button></p>`
      }
    </header>`;
  }

  private said(): TemplateResult {
    const { problem, reading } = this;
    const count = reading.files().length;
    const waiting = reading.waiting();
    const unfit = reading.now() === null ? this.address.said() : '';
    return html`${this.isOver ? dropLine(count) : nothing}
      ${problem === null ? nothing : problemLine(problem)}
      ${waiting.length === 0 ? nothing : addOrReplace(waiting, count)}
      ${unfit === '' ? nothing : html`<p class="second no-print" id="address-said" role="status">${terminal(unfit)}</p>`}
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
  private opened(read: WasRead): boolean {
    const { site, session, undo, fileStep, address, isQuiet } = read;
    this.problem = null;
    // What was cited is a line of the last reading; a file that only grew has it still.
    if (!isQuiet) this.evidence.clear();
    const chosen = firstChosen(site, this.state?.chosen ?? null);
    const isFirst = this.state === null || this.view === '';
    const { span = null, inputs = {} } = this.state ?? {};
    const followed = this.following.now();
    const arrivals = arrivalsAfter(this.state?.arrivals ?? noArrivals, site, {
      ...read,
      modified: (name) => this.following.modified(name),
    });
    this.state = { site, session, chosen, span, inputs, undo, fileStep, followed, arrivals };
    if (address !== null) history.replaceState(null, '', address === '' ? '#' : address);
    const isStaying = !isFirst && address === null;
    if (isStaying) this.address.renewed();
    else this.address.opened();
    return isStaying;
  }

  private showFollowed(): void {
    if (this.state === null) return;
    const followed = this.following.now();
    // Of a folder that nobody looks at no row is seen to come.
    const arrivals = followed === null ? noArrivals : this.state.arrivals;
    this.state = { ...this.state, followed, arrivals };
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

  private tell(error: unknown): void {
    this.problem = refusalOf(error);
  }
}

function detailOf<T>(event: Event): T {
  if (!(event instanceof CustomEvent)) throw new TypeError(`${event.type} carries nothing.`);
  return event.detail;
}

function problemLine({ where, what, fix }: Refusal): TemplateResult {
  return html`<p class="problem" role="alert"><span class="fail">Not done:</span> ${terminal(`${where}: ${what} ${fix}`)}</p>`;
}

function dropLine(count: number): TemplateResult {
  return html`<p class="drop-line no-print">${count === 0 ? 'Drop to read these files' : 'Drop to add these files'}</p>`;
}

function periodOf({ from, to, zone }: SiteModel): string {
  if (from === null || to === null) return 'No instant was read.';
  return `${sayInstant(from, zone)} to ${sayInstant(to, zone)}, all times in ${zone}`;
}

customElements.define('steadypair-page', SteadypairPage);
