import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { SourceLine } from '../../src/vocabulary.ts';
import { type Evidence, evidenceOf } from '../evidence.ts';
import { type Chosen, firstChosen, firstView, type PageState } from '../page-state.ts';
import { keepPaper } from '../paper.ts';
import type { LinesAround, NamedFile, NamedText, PairModel, Refusal, SiteModel } from '../protocol.ts';
import { openSession, refusalOf, type Session } from '../session.ts';
import { views } from '../views.ts';
import { notKnown } from './not-known.ts';
import { PageElement } from './page-element.ts';
import { type FileProgress, progressed } from './reading-progress.ts';
import './start-view.ts';
import './about-page.ts';

/** Everything: what was read, which view shows it, the margin. Its children ask for changes by events. */
export class SteadypairPage extends PageElement {
  static override properties = {
    state: { state: true },
    reading: { state: true },
    problem: { state: true },
    view: { state: true },
  };
  declare state: PageState | null;
  declare reading: { readonly session: Session; readonly files: readonly FileProgress[] } | null;
  declare problem: Refusal | null;
  declare view: string;
  private readonly evidence: Evidence = evidenceOf(this, (cited, reach) => this.readLines(cited, reach));
  /** The section that the view to be opened shows first; empty: its begin. */
  private section = '';
  private given: readonly NamedFile[] = [];
  /** The phrasebooks before each lesson, the last before the last. */
  private earlier: readonly (NamedText | null)[] = [];

  constructor() {
    super();
    this.state = null;
    this.reading = null;
    this.problem = null;
    this.view = '';
    this.addEventListener(
      'files',
      (event) => void this.read(detailOf<readonly NamedFile[]>(event), null, false, []),
    );
    this.addEventListener(
      'phrasebook',
      (event) => void this.readAgain(detailOf<NamedText | null>(event), []),
    );
    this.addEventListener('taught', (event) => void this.readTaught(detailOf<string>(event)));
    this.addEventListener(
      'undo',
      () => void this.readAgain(this.earlier.at(-1) ?? null, this.earlier.slice(0, -1)),
    );
    this.addEventListener('site', (event) => this.show(detailOf<SiteModel>(event)));
    this.addEventListener('pair', (event) => this.showPair(detailOf<PairModel>(event)));
    this.addEventListener('choose', (event) => this.choose(detailOf<Chosen>(event)));
    this.addEventListener('mend', (event) => this.mend(detailOf<string>(event)));
    this.addEventListener('cancel', () => this.cancel());
    this.addEventListener('problem', (event) => this.tell(detailOf<unknown>(event)));
    keepPaper(this);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('hashchange', () => this.follow());
    window.addEventListener('unhandledrejection', (event) => this.tell(event.reason));
  }

  override render(): TemplateResult {
    return html`${this.header()}
      <div class=${this.hasMargin() ? 'columns' : 'columns alone'}>
        <main tabindex="-1">${this.said()}${this.body()}<about-page .state=${this.state}></about-page></main>
        ${this.hasMargin() ? this.evidence.margin() : nothing}
      </div>`;
  }

  private hasMargin(): boolean {
    return this.state !== null && this.reading === null && this.view !== '';
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

  private said(): TemplateResult | typeof nothing {
    if (this.problem === null) return nothing;
    const { where, what, fix } = this.problem;
    return html`<p class="problem" role="alert"><span class="fail">Not done:</span> ${terminal(`${where}: ${what} ${fix}`)}</p>`;
  }

  private body(): TemplateResult {
    if (this.reading !== null)
      return html`<reading-progress .files=${this.reading.files}></reading-progress>`;
    const view = views.find((v) => v.id === this.view);
    return this.state === null || view === undefined
      ? html`<start-view></start-view>`
      : html`${view.id === 'sources' ? nothing : notKnown(this.state.site)}${view.render(this.state)}`;
  }

  private async read(
    files: readonly NamedFile[],
    phrasebook: NamedText | null,
    isAligned: boolean,
    before: readonly (NamedText | null)[],
  ): Promise<void> {
    this.reading?.session.close();
    this.problem = null;
    // What was cited is a line of the last reading.
    this.evidence.clear();
    const session = openSession((file, bytes, rows) => this.progress(file, bytes, rows));
    this.reading = {
      session,
      files: files
        .filter(({ name }) => !/\.ya?ml$/i.test(name))
        .map(({ name, file }) => ({ name, size: file.size, bytes: 0, rows: 0, state: 'waiting' })),
    };
    try {
      const site = await session.ask<'read'>({ kind: 'read', files, phrasebook, isAligned });
      this.state?.session.close();
      this.given = files;
      this.earlier = before;
      const chosen = firstChosen(site, this.state?.chosen ?? null);
      this.state = { site, session, chosen, undo: before.length };
      this.reading = null;
      this.open(this.view === '' ? firstView(site) : this.view);
    } catch (error) {
      session.close();
      this.reading = null;
      this.tell(error);
    }
  }

  /** The same files with another phrasebook: it takes the place of the one among the files. */
  private readAgain(phrasebook: NamedText | null, before: readonly (NamedText | null)[]): Promise<void> {
    const old = this.state?.site.phrasebook?.file;
    const files = this.given.filter(({ name }) => name !== old);
    return this.read(files, phrasebook, this.state?.site.isAligned ?? false, before);
  }

  private readTaught(text: string): Promise<void> {
    const old = this.state?.site.phrasebook ?? null;
    return this.readAgain({ file: old?.file ?? 'phrasebook.yaml', text }, [...this.earlier, old]);
  }

  private progress(name: string, bytes: number, rows: number): void {
    const { reading } = this;
    if (reading === null) return;
    const files = progressed(reading.files, name, bytes, rows);
    this.reading = { ...reading, files };
  }

  private cancel(): void {
    this.reading?.session.close();
    this.reading = null;
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
    const id = location.hash.slice(1);
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

function periodOf({ from, to, zone }: SiteModel): string {
  if (from === null || to === null) return 'No instant was read.';
  return `${sayInstant(from, zone)} to ${sayInstant(to, zone)}, all times in ${zone}`;
}

customElements.define('steadypair-page', SteadypairPage);
