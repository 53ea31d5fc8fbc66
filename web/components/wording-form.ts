import { html, nothing, type TemplateResult } from 'lit';
import { findWordings } from '../../src/report/find-wordings.ts';
import type { SeenWording } from '../../src/vocabulary.ts';
import type { SurveyModel } from '../protocol.ts';
import { type Choices, isOpen, parameterGroups } from '../teach-rules.ts';
import { messageTable, unitTable } from './message-table.ts';
import { PageElement } from './page-element.ts';
import type { Previews } from './pattern-detail.ts';
import { valueTable } from './value-table.ts';

/** So many more are shown at a time. */
const step = 40;
type Kind = 'values' | 'messages' | 'units';

/** All units, values and messages of the files, those of redundancy first, each with a drop-down of what it means. Fires `choice`. */
export class WordingForm extends PageElement {
  static override properties = {
    survey: { attribute: false },
    choices: { attribute: false },
    previews: { attribute: false },
    words: { state: true },
    isAll: { state: true },
    shown: { state: true },
  };
  declare survey: SurveyModel;
  declare choices: Choices;
  declare previews: Previews;
  declare words: string;
  /** Whether those that are recognised are shown too; `null` until a person says so. */
  declare isAll: boolean | null;
  /** How many of each kind are shown. */
  declare shown: Readonly<Record<Kind, number>>;

  constructor() {
    super();
    this.words = '';
    this.isAll = null;
    this.shown = { values: step, messages: step, units: step };
  }

  override render(): TemplateResult {
    const { wordings } = this.survey;
    const unknown = wordings.filter((w) => w.understood === null).length;
    const isAll = this.isAll ?? unknown === 0;
    const found = findWordings(this.survey, this.words);
    const isShown = (w: SeenWording): boolean => isAll || w.understood === null;
    const units = found.filter((w) => w.kind === 'unit' && isShown(w));
    const groups = this.groups(found).filter((g) => isAll || isOpen(g));
    const messages = found.filter((w) => w.kind === 'message' && isShown(w));
    const { choices, previews } = this;
    return html`<div class="line">
        <label>Find <input type="search" name="find" .value=${this.words} @input=${this.onFind} autocomplete="off" spellcheck="false" placeholder="words, in any order" /></label>
        <label><input type="checkbox" name="all" .checked=${isAll} @change=${this.onAll} /> Show what is recognised too</label>
      </div>
      <p class="second" role="status" id="found">${unknown.toLocaleString('en')} of ${wordings.length.toLocaleString('en')} ${wordings.length === 1 ? 'wording' : 'wordings'} not recognised; shown: ${sayShown(units.length, groups.length, messages.length)}.</p>
      ${units.length === 0 ? nothing : html`<h3>Units</h3>${unitTable(units.slice(0, this.shown.units), choices, previews)}${this.more('units', units.length)}`}
      ${groups.length === 0 ? nothing : html`<h3>Values</h3>${valueTable(groups.slice(0, this.shown.values), choices)}${this.more('values', groups.length)}`}
      ${messages.length === 0 ? nothing : html`<h3>Messages</h3>${messageTable(messages.slice(0, this.shown.messages), choices, previews)}${this.more('messages', messages.length)}`}`;
  }

  /** The parameters that were found by their names or by a value of theirs, each with all its values. */
  private groups(found: readonly SeenWording[]): ReturnType<typeof parameterGroups> {
    if (this.words.trim() === '') return parameterGroups(this.survey.wordings);
    const names = new Set(
      found.filter(({ kind }) => kind === 'value' || kind === 'parameter').map(({ name }) => name),
    );
    return parameterGroups(this.survey.wordings).filter(({ parameter }) => names.has(parameter.name));
  }

  private more(kind: Kind, count: number): TemplateResult | typeof nothing {
    const left = count - this.shown[kind];
    if (left <= 0) return nothing;
    const lengthen = (): void => {
      this.shown = { ...this.shown, [kind]: this.shown[kind] + step };
    };
    return html`<p><button type="button" id=${`more-${kind}`} @click=${lengthen}>Show ${Math.min(step, left)} more of ${left.toLocaleString('en')}</button></p>`;
  }

  private onFind({ target }: Event): void {
    if (target instanceof HTMLInputElement) this.words = target.value;
  }

  private onAll({ target }: Event): void {
    if (target instanceof HTMLInputElement) this.isAll = target.checked;
  }
}

function sayShown(units: number, parameters: number, messages: number): string {
  const counts: readonly (readonly [number, string])[] = [
    [units, 'unit'],
    [parameters, 'parameter'],
    [messages, 'message'],
  ];
  const said = counts.flatMap(([count, word]) =>
    count === 0 ? [] : [`${count.toLocaleString('en')} ${count === 1 ? word : `${word}s`}`],
  );
  return said.length === 0 ? 'none' : said.join(', ');
}

customElements.define('wording-form', WordingForm);
