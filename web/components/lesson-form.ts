import { html, nothing, type TemplateResult } from 'lit';
import type { Lesson, LessonPreview } from '../../src/pipeline.ts';
import { terminal } from '../../src/report/escape.ts';
import { listed } from '../../src/report/find-wordings.ts';
import { gauges, happenings, type SeenWording, stateSignals } from '../../src/vocabulary.ts';
import {
  draftOf,
  type LessonDraft,
  lessonOf,
  type NamedLesson,
  sayLesson,
  valuesOf,
} from '../lesson-draft.ts';
import { Refused, type Session } from '../session.ts';
import { PageElement } from './page-element.ts';

/** How long a person may type before what the rule does is looked up. */
const restMs = 150;
const whose: readonly (readonly [string, string])[] = [
  ['', 'as the row says'],
  ['pair', 'the pair'],
  ['active', 'the active half'],
  ['standby', 'the standby half'],
  ['other', 'the half that does not speak'],
];

/** Says what one wording means, and shows what that would make of the first rows. Fires `lesson` with one that is named. */
export class LessonForm extends PageElement {
  static override properties = {
    wording: { attribute: false },
    lessons: { attribute: false },
    session: { attribute: false },
    draft: { state: true },
    preview: { state: true },
    outcome: { state: true },
  };
  declare wording: SeenWording;
  declare lessons: readonly Lesson[];
  declare session: Session;
  declare draft: LessonDraft;
  declare preview: LessonPreview | null;
  declare outcome: string;

  constructor() {
    super();
    this.preview = null;
    this.outcome = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.draft = draftOf(this.wording);
    void this.look();
  }

  override render(): TemplateResult {
    const { draft, wording } = this;
    const words =
      wording.kind === 'message'
        ? 'Pattern'
        : wording.kind === 'unit'
          ? 'Pattern with pair and half'
          : 'Parameter';
    const isFixed = wording.kind === 'parameter' || wording.kind === 'value';
    return html`<form class="fields" @submit=${this.onSubmit} @input=${this.onInput}>
      <label class="wide">${words}<input name="text" class="code" .value=${draft.text} ?readonly=${isFixed} spellcheck="false" autocomplete="off" /></label>
      ${wording.kind === 'unit' ? nothing : this.meaningFields()}
      <p role="status" id="rule-count">${this.outcome}</p>
      ${this.lines()}
      <p class="choices">
        <button type="submit" id="add-lesson" value="add">Add to the lessons</button>
        <button type="submit" id="use-rule" value="use">Add and read again</button>
      </p>
    </form>`;
  }

  private meaningFields(): TemplateResult {
    const { draft, wording } = this;
    const option = (value: string, chosen: string, words = value): TemplateResult =>
      html`<option value=${value} ?selected=${value === chosen}>${words}</option>`;
    const others = wording.kind === 'message' ? happenings : gauges;
    const values = valuesOf(draft.signal);
    return html`<label>It means <select name="signal">
        ${option('', draft.signal, 'choose')}
        <optgroup label="A state">${stateSignals.map((s) => option(s, draft.signal))}</optgroup>
        <optgroup label=${wording.kind === 'message' ? 'A happening' : 'A gauge'}>${others.map((s) => option(s, draft.signal))}</optgroup>
        ${option('ignore', draft.signal, 'nothing: ignore it')}
      </select></label>
      ${
        values.length === 0 || wording.kind === 'parameter'
          ? nothing
          : html`<label>Value <select name="value">${option('', draft.value, 'choose')}${values.map((v) => option(v, draft.value))}</select></label>`
      }
      ${
        wording.kind === 'message' && draft.signal !== 'ignore'
          ? html`<label>Of <select name="whose">${whose.map(([value, said]) => option(value, draft.whose, said))}</select></label>`
          : nothing
      }`;
  }

  private lines(): TemplateResult | typeof nothing {
    if (this.preview === null || this.preview.lines.length === 0) return nothing;
    return html`<div class="scroll wide"><table class="preview">
      <caption class="hidden">What the first rows would say</caption>
      <thead><tr><th scope="col">Row</th><th scope="col">The timeline will say</th></tr></thead>
      <tbody>${this.preview.lines.map(
        ({ at, says }) =>
          html`<tr><td class="long"><code>${terminal(at.text)}</code> <span class="second">${terminal(at.file)}, line ${at.line}</span></td><td class="long">${terminal(says)}</td></tr>`,
      )}</tbody>
    </table></div>`;
  }

  private onInput({ target }: Event): void {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    const changed = { ...this.draft, [target.name]: target.value };
    const isKept = target.name !== 'signal' || valuesOf(changed.signal).includes(changed.value);
    this.draft = isKept ? changed : { ...changed, value: '' };
    void this.look();
  }

  private async look(): Promise<void> {
    const { draft, wording } = this;
    await new Promise((resolve) => setTimeout(resolve, restMs));
    if (draft !== this.draft || !this.isConnected) return;
    // A pattern is tried before it is said what it means: `note` takes any.
    const lesson = lessonOf(wording, draft) ?? lessonOf(wording, { ...draft, signal: 'note', value: '' });
    if (lesson === null) return;
    try {
      const preview = await this.session.ask<'preview'>({
        kind: 'preview',
        lessons: [...this.lessons, lesson],
      });
      if (draft !== this.draft) return;
      const does = lesson.kind === 'ignore' ? 'set aside' : 'use';
      this.outcome = `This rule would ${does} ${preview.rows === 1 ? 'one row' : `${preview.rows.toLocaleString('en')} rows`} that no rule knows now.`;
      this.preview = draft.signal === '' && wording.kind !== 'unit' ? null : preview;
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      this.preview = null;
      this.outcome = `${error.refusal.what} ${error.refusal.fix}`;
    }
  }

  private onSubmit(event: SubmitEvent): void {
    event.preventDefault();
    const lesson = lessonOf(this.wording, this.draft);
    if (lesson === null) {
      this.outcome = 'Choose what it means, and its value.';
      return;
    }
    const named: NamedLesson = { lesson, says: `${listed(this.wording)}: ${sayLesson(lesson)}` };
    const isUsed = event.submitter instanceof HTMLButtonElement && event.submitter.value === 'use';
    this.dispatchEvent(new CustomEvent('lesson', { bubbles: true, detail: [named] }));
    if (isUsed) this.dispatchEvent(new CustomEvent('teach', { bubbles: true }));
  }
}

customElements.define('lesson-form', LessonForm);
