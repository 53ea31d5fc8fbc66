import { html, nothing, type TemplateResult } from 'lit';
import type { PageState } from '../page-state.ts';
import type { NamedText, SurveyModel } from '../protocol.ts';
import { usefulRules } from '../rule-previews.ts';
import { saveText } from '../save-text.ts';
import type { Session } from '../session.ts';
import { rowsOf, sayRead, toDo } from '../sources-words.ts';
import { type Choices, leftOver, type NamedRule, rulesOf } from '../teach-rules.ts';
import type { View } from '../view.ts';
import { clocksSection } from './clocks-section.ts';
import './files-given.ts';
import './files-list.ts';
import './left-out.ts';
import { type RulesLook, rulesLook } from '../rules-look.ts';
import { PageElement } from './page-element.ts';
import { phrasebookSection } from './phrasebook-section.ts';
import { remarksSection } from './remarks-section.ts';
import type { Chosen } from './rule-selects.ts';
import { rulesBar } from './rules-bar.ts';
import './stamps-form.ts';
import './wording-form.ts';

/** What is larger is looked through only when a person asks for it: it takes as long as reading it did. */
const mostBytes = 67_108_864;

/** What was read, what was not, and what to do: rules for files, units, values and messages, applied all at once. */
export class SourcesView extends PageElement {
  static override properties = {
    state: { attribute: false },
    survey: { state: true },
    isAsked: { state: true },
    choices: { state: true },
    ofFiles: { state: true },
  };
  declare state: PageState;
  declare survey: SurveyModel | null;
  declare isAsked: boolean;
  /** What was chosen in the tables, and not yet read with. */
  declare choices: Choices;
  /** Rules on how files are read, by file. */
  declare ofFiles: readonly NamedRule[];
  private surveyed: Session | null = null;
  private applied: readonly NamedRule[] = [];
  private readonly looking: RulesLook = rulesLook(() => this.requestUpdate());

  constructor() {
    super();
    this.survey = null;
    this.isAsked = false;
    this.choices = new Map();
    this.ofFiles = [];
    this.addEventListener('choice', (event) => {
      if (event instanceof CustomEvent) this.choose(event.detail);
    });
    this.addEventListener('rule', (event) => {
      if (event instanceof CustomEvent) this.add(event.detail);
    });
    this.addEventListener('apply', () => void this.apply());
  }

  override willUpdate(): void {
    const { session, site } = this.state;
    if (this.surveyed === session) return;
    // Other files, or other rules: what they say is looked through once more; what was not applied stays.
    this.surveyed = session;
    this.survey = null;
    this.choices = leftOver(this.choices, this.applied);
    this.ofFiles = this.ofFiles.filter((rule) => !this.applied.includes(rule));
    this.applied = [];
    this.isAsked = false;
    this.looking.clear();
    if (bytesOf(site) <= mostBytes) void this.lookThrough();
  }

  override render(): TemplateResult {
    const { site, session } = this.state;
    return html`<h1 class="verdict">${sayRead(site)}</h1>
      ${this.toDo()}
      <files-given .state=${this.state}></files-given>
      <left-out .state=${this.state} .survey=${this.survey} .rules=${this.ofFiles}></left-out>
      <section id="wordings" tabindex="-1">
        <h2>Units, values and messages</h2>
        ${this.wordings()}
      </section>
      ${this.rulesBar()}
      ${remarksSection(site)}
      <section id="time-zone" tabindex="-1">
        <h2>Time zone and date format</h2>
        <stamps-form .session=${session} .survey=${this.survey}></stamps-form>
      </section>
      ${clocksSection(site, (isAligned) => void this.align(isAligned))}
      ${phrasebookSection(site.phrasebook, this.survey, {
        use: (text) => this.use(text),
        saveDraft: () => this.saveDraft(),
      })}
      <files-list id="files-read" tabindex="-1" .files=${site.files}></files-list>`;
  }

  private toDo(): TemplateResult | typeof nothing {
    const unknown = this.survey?.wordings.filter((w) => w.understood === null).length ?? null;
    const read = new Set(this.state.site.files.map(({ input }) => input.file));
    const guessed = this.survey?.files.filter((f) => f.isGuess && read.has(f.file)).length ?? 0;
    const all = toDo(this.state.site, unknown, guessed);
    if (all.length === 0) return nothing;
    return html`<ul id="to-do" class="no-print">${all.map(
      ({ section, says }) =>
        html`<li><button type="button" class="link" @click=${() => this.goTo(section)}>${says}</button></li>`,
    )}</ul>`;
  }

  private goTo(section: string): void {
    const found = this.querySelector(`#${section}`);
    found?.scrollIntoView();
    if (found instanceof HTMLElement) found.focus({ preventScroll: true });
  }

  private async lookThrough(): Promise<void> {
    this.isAsked = true;
    const { session } = this.state;
    const survey = await session.ask<'survey'>({ kind: 'survey' });
    if (session !== this.surveyed) return;
    this.survey = survey;
    if (this.rules().length > 0) this.change(this.choices, this.ofFiles);
  }

  private wordings(): TemplateResult {
    const { survey, choices } = this;
    if (survey?.files.length === 0)
      return html`<p>No timestamp was found in any file, so there is nothing to list. Export with date and time as text or CSV, or describe a line and its timestamp under files in a phrasebook.</p>`;
    if (survey !== null)
      return html`<wording-form .survey=${survey} .choices=${choices} .previews=${this.looking.previews()}></wording-form>`;
    return this.isAsked
      ? html`<p role="status">Listing units, values and messages.</p>`
      : html`<p>The files are large: listing what they say takes as long as reading them did.</p>
        <p><button type="button" id="look" @click=${() => void this.lookThrough()}>List units, values and messages</button></p>`;
  }

  private rules(): readonly NamedRule[] {
    return [...this.ofFiles, ...(this.survey === null ? [] : rulesOf(this.survey.wordings, this.choices))];
  }

  private rulesBar(): TemplateResult | typeof nothing {
    const { looking, ofFiles } = this;
    const rules = this.rules();
    const useful = usefulRules(rules, looking.previews());
    return rulesBar(
      {
        rules: useful,
        ofFiles,
        idle: rules.filter(({ key }) => looking.previews().get(key)?.isOfUse === false).length,
        effect: looking.effect(),
        undo: this.state.undo,
      },
      {
        apply: () => void this.apply(),
        drop: (key) =>
          this.change(
            this.choices,
            this.ofFiles.filter((rule) => rule.key !== key),
          ),
        undo: () => this.dispatchEvent(new CustomEvent('undo', { bubbles: true })),
      },
    );
  }

  private choose({ key, choice }: Chosen): void {
    this.change(new Map(this.choices).set(key, choice), this.ofFiles);
  }

  /** A file has one rule: the one said last. */
  private add(more: readonly NamedRule[]): void {
    const keys = new Set(more.map(({ key }) => key));
    this.change(this.choices, [...this.ofFiles.filter(({ key }) => !keys.has(key)), ...more]);
  }

  private change(choices: Choices, ofFiles: readonly NamedRule[]): void {
    this.choices = choices;
    this.ofFiles = ofFiles;
    const { session, site } = this.state;
    this.looking.look(session, this.rules(), bytesOf(site) <= mostBytes ? rowsOf(site) : null);
  }

  private async apply(): Promise<void> {
    const { session } = this.state;
    const rules = await this.looking.useful(session, this.rules());
    if (rules.length === 0) return;
    this.applied = rules;
    try {
      const lessons = rules.flatMap((rule) => rule.lessons);
      const detail = await session.ask<'teach'>({ kind: 'teach', lessons });
      this.dispatchEvent(new CustomEvent('taught', { bubbles: true, detail }));
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    }
  }

  private saveDraft(): void {
    if (this.survey !== null) saveText('draft.yaml', this.survey.draft);
  }

  private use(detail: NamedText | null): void {
    this.dispatchEvent(new CustomEvent('phrasebook', { bubbles: true, detail }));
  }

  private async align(isAligned: boolean): Promise<void> {
    const detail = await this.state.session.ask<'align'>({ kind: 'align', isAligned });
    this.dispatchEvent(new CustomEvent('site', { bubbles: true, detail }));
  }
}

function bytesOf({ files }: PageState['site']): number {
  return files.reduce((sum, { input }) => sum + input.bytes, 0);
}

customElements.define('sources-view', SourcesView);

export const sourcesView: View = {
  id: 'sources',
  title: 'Sources',
  render: (state) => html`<sources-view .state=${state}></sources-view>`,
};
