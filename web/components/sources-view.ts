import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { NamedLesson } from '../lesson-draft.ts';
import type { PageState } from '../page-state.ts';
import type { NamedText, SurveyModel } from '../protocol.ts';
import { saveText } from '../save-text.ts';
import type { Session } from '../session.ts';
import type { View } from '../view.ts';
import { clocksSection } from './clocks-section.ts';
import './files-given.ts';
import './files-list.ts';
import './left-out.ts';
import { lessonList } from './lesson-list.ts';
import { PageElement } from './page-element.ts';
import { remarksSection } from './remarks-section.ts';
import './wording-form.ts';

/** What is larger is looked through only when a person asks for it: it takes as long as reading it did. */
const mostBytes = 67_108_864;

/** How each file was understood, what was not, and the phrasebook in which a person can teach it. */
export class SourcesView extends PageElement {
  static override properties = {
    state: { attribute: false },
    survey: { state: true },
    isAsked: { state: true },
    lessons: { state: true },
  };
  declare state: PageState;
  declare survey: SurveyModel | null;
  declare isAsked: boolean;
  /** What is taught, and not yet read with. */
  declare lessons: readonly NamedLesson[];
  private surveyed: Session | null = null;

  constructor() {
    super();
    this.survey = null;
    this.isAsked = false;
    this.lessons = [];
    this.addEventListener('lesson', (event) => {
      if (event instanceof CustomEvent) this.add(event.detail);
    });
    this.addEventListener('teach', () => void this.teach());
  }

  override willUpdate(): void {
    const { session, site } = this.state;
    if (this.surveyed === session) return;
    // Other files, or other rules: what they say is looked through once more.
    this.surveyed = session;
    this.survey = null;
    this.lessons = [];
    this.isAsked = false;
    if (site.files.reduce((sum, f) => sum + f.input.bytes, 0) <= mostBytes) void this.look();
  }

  override render(): TemplateResult {
    const { site, session } = this.state;
    return html`<h1 class="verdict">${this.summary()}</h1>
      <files-given .state=${this.state}></files-given>
      <left-out .state=${this.state} .survey=${this.survey}></left-out>
      <section id="wordings" tabindex="-1">
        <h2>Wordings and values</h2>
        ${this.wordings()}
      </section>
      ${this.phrasebook()} ${remarksSection(site)}
      ${clocksSection(site, session, (isAligned) => void this.align(isAligned))}
      <files-list id="files-read" tabindex="-1" .files=${site.files}></files-list>`;
  }

  private async look(): Promise<void> {
    this.isAsked = true;
    const { session } = this.state;
    const survey = await session.ask<'survey'>({ kind: 'survey' });
    if (session === this.surveyed) this.survey = survey;
  }

  private wordings(): TemplateResult {
    const { survey, state, lessons } = this;
    if (survey?.files.length === 0)
      return html`<p>No file holds lines or rows with a stamp that could be found, so there is nothing to list. Export with date and time as text or CSV, or say under files in a phrasebook how a line and its stamp are written.</p>
        ${this.lessonList()}`;
    if (survey !== null)
      return html`${this.lessonList()}
        <wording-form .survey=${survey} .lessons=${lessons} .session=${state.session}></wording-form>`;
    return this.isAsked
      ? html`<p role="status">Looking through all wordings.</p>`
      : html`<p>The files are large: to list their wordings they are read once more.</p>
        <p><button type="button" id="look" @click=${() => void this.look()}>List the wordings</button></p>`;
  }

  /** What is taught twice is one lesson: drafts of two files may name the same units. */
  private add(more: readonly NamedLesson[]): void {
    const known = new Set(this.lessons.map(({ lesson }) => JSON.stringify(lesson)));
    this.lessons = [...this.lessons, ...more.filter(({ lesson }) => !known.has(JSON.stringify(lesson)))];
  }

  private lessonList(): TemplateResult | typeof nothing {
    return lessonList(this.lessons, this.state.undo, {
      drop: (place) => this.drop(place),
      use: () => void this.teach(),
      undo: () => this.dispatchEvent(new CustomEvent('undo', { bubbles: true })),
    });
  }

  private drop(place: number): void {
    this.lessons = this.lessons.filter((_, i) => i !== place);
  }

  private async teach(): Promise<void> {
    const lessons = this.lessons.map(({ lesson }) => lesson);
    try {
      const detail = await this.state.session.ask<'teach'>({ kind: 'teach', lessons });
      this.dispatchEvent(new CustomEvent('taught', { bubbles: true, detail }));
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    }
  }

  private summary(): string {
    const { files, failures } = this.state.site;
    const left = failures.length === 0 ? '' : `, ${failures.length} left out`;
    const unknown = files.reduce((sum, f) => sum + f.input.rows.unmatched, 0);
    const rows = files.reduce((sum, f) => sum + f.input.rows.read, 0);
    const read = files.length === 1 ? 'One file was read' : `${files.length} files were read`;
    const said =
      unknown === 0
        ? 'every row was understood'
        : `${unknown.toLocaleString('en')} of ${rows.toLocaleString('en')} rows were not understood`;
    return files.length === 0 ? 'No file could be read.' : `${read}${left}; ${said}.`;
  }

  private phrasebook(): TemplateResult {
    const { phrasebook } = this.state.site;
    return html`<section id="phrasebook" tabindex="-1">
      <h2>Phrasebook</h2>
      <p>
        ${
          phrasebook === null
            ? 'Only the built-in phrasebook is in use: plain English.'
            : html`In use: <b class="long">${terminal(phrasebook.file)}</b>, with the built-in one behind it.`
        }
      </p>
      <p class="choices">
        <label class="button">Load a phrasebook<input type="file" accept=".yaml,.yml" @change=${this.onLoad} /></label>
        <button type="button" id="save-phrasebook" ?disabled=${phrasebook === null} @click=${() => phrasebook !== null && saveText(baseName(phrasebook.file), phrasebook.text)}>Save the phrasebook</button>
        <button type="button" ?disabled=${phrasebook === null} @click=${() => this.use(null)}>Read without it</button>
        <button type="button" id="save-draft" ?disabled=${(this.survey?.files.length ?? 0) === 0} @click=${() => this.saveDraft()}>Save a draft with all wordings</button>
      </p>
      ${phrasebook === null ? nothing : html`<details><summary>Its text</summary><pre tabindex="0" aria-label="Text of the phrasebook"><code>${terminal(phrasebook.text.slice(0, 20_000)).replaceAll('‹000A›', '\n')}</code></pre></details>`}
    </section>`;
  }

  private saveDraft(): void {
    if (this.survey !== null) saveText('draft.yaml', this.survey.draft);
  }

  private async onLoad({ target }: Event): Promise<void> {
    const file = target instanceof HTMLInputElement ? target.files?.[0] : undefined;
    if (file !== undefined) this.use({ file: file.name, text: await file.text() });
  }

  private use(detail: NamedText | null): void {
    this.dispatchEvent(new CustomEvent('phrasebook', { bubbles: true, detail }));
  }

  private async align(isAligned: boolean): Promise<void> {
    const detail = await this.state.session.ask<'align'>({ kind: 'align', isAligned });
    this.dispatchEvent(new CustomEvent('site', { bubbles: true, detail }));
  }
}

function baseName(name: string): string {
  return name.split('/').at(-1) ?? name;
}

customElements.define('sources-view', SourcesView);

export const sourcesView: View = {
  id: 'sources',
  title: 'Sources',
  render: (state) => html`<sources-view .state=${state}></sources-view>`,
};
