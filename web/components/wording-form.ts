import { html, nothing, type TemplateResult } from 'lit';
import type { Lesson } from '../../src/pipeline.ts';
import { terminal } from '../../src/report/escape.ts';
import { gauges, happenings, stateSignals, stateValues } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import type { FileModel, Wording } from '../protocol.ts';
import { Refused, type Session } from '../session.ts';
import { PageElement } from './page-element.ts';

interface Draft {
  readonly wording: string;
  readonly kind: 'message' | 'parameter' | 'unit' | 'ignore';
  /** A pattern; of a parameter its name. */
  readonly text: string;
  readonly signal: string;
  readonly value: string;
}

interface Unknown extends Wording {
  readonly file: string;
}

const mostRows = 40;
/** How long a person may type before the rows are counted anew. */
const restMs = 150;

/** Wording that no rule knows, the most frequent first, and a form that makes a rule of it. Fires `phrasebook`. */
export class WordingForm extends PageElement {
  static override properties = {
    files: { attribute: false },
    session: { attribute: false },
    draft: { state: true },
    outcome: { state: true },
  };
  declare files: readonly FileModel[];
  declare session: Session;
  declare draft: Draft | null;
  declare outcome: string;

  constructor() {
    super();
    this.draft = null;
    this.outcome = '';
  }

  override render(): TemplateResult {
    const unknown = this.unknown();
    return html`<div class="scroll"><table class="wordings">
        <thead><tr><th scope="col">Wording</th><th scope="col" class="number">Rows</th><th scope="col">First in</th><th scope="col"><span class="hidden">What to do</span></th></tr></thead>
        <tbody>${unknown.slice(0, mostRows).map((u) => this.row(u))}</tbody>
      </table></div>
      ${unknown.length > mostRows ? html`<p class="second">and ${unknown.length - mostRows} further wordings, less frequent.</p>` : nothing}`;
  }

  /** Each wording once, whatever number of files it stands in. */
  private unknown(): readonly Unknown[] {
    const all = new Map<string, Unknown>();
    for (const { input, wordings } of this.files)
      for (const wording of wordings) {
        const known = all.get(wording.wording);
        const count = (known?.count ?? 0) + wording.count;
        all.set(wording.wording, { ...(known ?? { ...wording, file: input.file }), count });
      }
    return [...all.values()].sort((a, b) => b.count - a.count);
  }

  private row(unknown: Unknown): TemplateResult {
    const { wording, count, firstLine, file } = unknown;
    const cite = citing(wording, [{ file, line: firstLine, text: wording }]);
    const isOpen = this.draft?.wording === wording;
    return html`<tr @mouseenter=${cite} @focusin=${cite}>
        <td class="long"><code>${terminal(wording)}</code></td>
        <td class="number">${count.toLocaleString('en')}</td>
        <td class="long">${terminal(file)}, line ${firstLine}</td>
        <td><button type="button" aria-expanded=${isOpen} @click=${() => this.open(isOpen ? null : unknown)}>${isOpen ? 'Leave it' : 'Teach'}</button></td>
      </tr>
      ${isOpen && this.draft !== null ? html`<tr><td colspan="4">${this.form(this.draft)}</td></tr>` : nothing}`;
  }

  private open(unknown: Unknown | null): void {
    if (unknown === null) {
      this.draft = null;
      return;
    }
    this.draft = draftFor(unknown);
    void this.count();
  }

  private form(draft: Draft): TemplateResult {
    const option = (value: string, chosen: string, words = value): TemplateResult =>
      html`<option value=${value} ?selected=${value === chosen}>${words}</option>`;
    const signals =
      draft.kind === 'message' ? [...happenings, ...stateSignals] : [...stateSignals, ...gauges];
    return html`<form class="fields" @submit=${this.onSubmit} @input=${this.onInput}>
      <label>It is <select name="kind">${option('message', draft.kind, 'a message')}${option('parameter', draft.kind, 'a parameter')}${option('unit', draft.kind, 'a unit')}${option('ignore', draft.kind, 'nothing: ignore it')}</select></label>
      <label>${draft.kind === 'parameter' ? 'Parameter' : 'Pattern'}<input name="text" class="code" .value=${draft.text} spellcheck="false" autocomplete="off" /></label>
      ${draft.kind === 'ignore' || draft.kind === 'unit' ? nothing : html`<label>It means <select name="signal">${signals.map((s) => option(s, draft.signal))}</select></label>`}
      ${draft.kind === 'ignore' || draft.kind === 'unit' ? nothing : this.valueField(draft)}
      <p role="status" id="rule-count">${this.outcome}</p>
      <button type="submit" id="use-rule">Add to the phrasebook and read again</button>
    </form>`;
  }

  private valueField(draft: Draft): TemplateResult | typeof nothing {
    const words = draft.kind === 'parameter' ? 'Values, as text: meaning, text: meaning' : 'Value';
    const values = stateSignals.find((s) => s === draft.signal);
    const allowed = values === undefined ? null : stateValues[values];
    if (values === undefined && draft.kind === 'message') return nothing;
    const hint = allowed === null ? '' : ` (${allowed.join(', ')})`;
    return html`<label>${words}${hint}<input name="value" .value=${draft.value} autocomplete="off" /></label>`;
  }

  private onInput({ target }: Event): void {
    const isField = target instanceof HTMLInputElement || target instanceof HTMLSelectElement;
    if (!isField || this.draft === null) return;
    const { value } = target;
    if (target.name === 'kind') {
      const kind = value === 'ignore' || value === 'parameter' || value === 'unit' ? value : 'message';
      this.draft = { ...this.draft, kind };
    } else this.draft = { ...this.draft, [target.name]: value };
    void this.count();
  }

  private async count(): Promise<void> {
    const { draft } = this;
    await new Promise((resolve) => setTimeout(resolve, restMs));
    if (draft === null || draft !== this.draft) return;
    try {
      const rows = await this.session.ask<'count'>({ kind: 'count', lesson: toLesson(draft) });
      const does = draft.kind === 'ignore' ? 'set aside' : 'use';
      this.outcome = `This rule would ${does} ${rows === 1 ? 'one row' : `${rows.toLocaleString('en')} rows`} that no rule knows now.`;
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      this.outcome = `${error.refusal.what} ${error.refusal.fix}`;
    }
  }

  private async onSubmit(event: Event): Promise<void> {
    event.preventDefault();
    if (this.draft === null) return;
    try {
      const text = await this.session.ask<'teach'>({ kind: 'teach', lesson: toLesson(this.draft) });
      this.draft = null;
      this.dispatchEvent(new CustomEvent('taught', { bubbles: true, detail: text }));
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    }
  }
}

/** What a wording most likely is: as the import lists it. */
function draftFor({ wording, pattern }: Wording): Draft {
  const unit = /^unit (.*)$/s.exec(wording)?.[1];
  if (unit !== undefined)
    return { wording, kind: 'unit', text: '^(?<pair>\\w+)-(?<half>\\w+)$', signal: 'note', value: '' };
  const parameter = /^parameter (.*)$/s.exec(wording)?.[1] ?? /^(.*?) = /s.exec(wording)?.[1];
  if (parameter !== undefined)
    return { wording, kind: 'parameter', text: parameter, signal: 'role', value: '' };
  return { wording, kind: 'message', text: pattern, signal: 'note', value: '' };
}

function toLesson({ kind, text, signal, value }: Draft): Lesson {
  if (kind === 'ignore' || kind === 'unit') return { kind, pattern: text };
  if (kind === 'parameter') return { kind, name: text, signal, values: valuesSaid(value) };
  return { kind, when: text, signal, value: value.trim() === '' ? null : value.trim() };
}

/** `linked: up, no link: down` as a mapping. */
function valuesSaid(text: string): Readonly<Record<string, string>> {
  const parts = text.split(',').flatMap((part): [string, string][] => {
    const [said = '', meant = ''] = part.split(':').map((p) => p.trim());
    return said === '' || meant === '' ? [] : [[said, meant]];
  });
  return Object.fromEntries(parts);
}

customElements.define('wording-form', WordingForm);
