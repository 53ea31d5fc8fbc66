import { html, type TemplateResult } from 'lit';
import { matchFor } from '../../src/report/draft-phrasebook.ts';
import { terminal } from '../../src/report/escape.ts';
import type { DraftKey, FileDraft, Survey, UnitDraft } from '../../src/vocabulary.ts';
import type { NamedRule } from '../teach-rules.ts';
import { PageElement } from './page-element.ts';

type Keys = Record<string, string | number | Readonly<Record<string, string | number>>>;

/** How a file of unknown layout may be read: what was guessed, to correct and add to the rules. Fires `rule`. */
export class DraftForm extends PageElement {
  static override properties = {
    draft: { attribute: false },
    survey: { attribute: false },
    isAdded: { state: true },
  };
  declare draft: FileDraft;
  declare survey: Survey;
  declare isAdded: boolean;

  constructor() {
    super();
    this.isAdded = false;
  }

  override render(): TemplateResult {
    const { keys, time, samples } = this.draft;
    return html`<form class="fields" @submit=${this.onSubmit}>
        <pre class="wide" tabindex="0" aria-label="How the file begins"><code>${samples.map((line) => `${terminal(line)}\n`)}</code></pre>
        ${keys.map((key) => field(key, ''))}
        ${time.map((key) => field(key, 'time.'))}
        ${this.units().map((u, i) => html`<label class="wide">Unit pattern${u.pair === null ? '' : ` of ${terminal(u.pair)}`}: ${terminal(u.because)}<input class="code" name=${`unit-${i}`} .value=${u.pattern} spellcheck="false" autocomplete="off" /></label>`)}
        <p class="choices"><button type="submit">Add rule</button> <span role="status" class="second">${this.isAdded ? 'Added to the rules below.' : ''}</span></p>
      </form>`;
  }

  private units(): readonly UnitDraft[] {
    return this.survey.units.filter(({ isOn }) => isOn);
  }

  private onSubmit(event: Event): void {
    event.preventDefault();
    if (!(event.target instanceof HTMLFormElement)) return;
    const form = new FormData(event.target);
    const said = (name: string): string => String(form.get(name) ?? '').trim();
    const { file, keys, time } = this.draft;
    const rule: Keys = {};
    for (const key of keys) {
      const value = saidOf(key, '', said);
      if (value !== null) rule[key.key] = value;
    }
    // A format is tried first and leaves other stamps as they are: it may stand for all files. The rest is said of this one.
    const format = said('time.format');
    const own: Record<string, string | number> = {};
    for (const { key, value } of time.filter((t) => t.key !== 'format')) {
      const text = said(`time.${key}`);
      if (text !== '') own[key] = typeof value === 'number' ? Number(text) : text;
    }
    if (Object.keys(own).length > 0) rule.time = own;
    const match = matchFor(file, this.survey.files);
    const rules: readonly NamedRule[] = [
      {
        key: `file ${file}`,
        says: `${match}: how its lines are read`,
        lessons: [{ kind: 'file', match, keys: rule }],
      },
      ...(format === '' ? [] : [formatRule(format)]),
      ...this.units().flatMap((unit, i): readonly NamedRule[] => {
        const pattern = said(`unit-${i}`);
        if (pattern === '') return [];
        return [
          {
            key: `unit ${pattern}`,
            says: `unit ${pattern}`,
            lessons: [{ kind: 'unit', pattern, pair: unit.pair }],
          },
        ];
      }),
    ];
    this.isAdded = true;
    this.dispatchEvent(new CustomEvent('rule', { bubbles: true, detail: rules }));
  }
}

function formatRule(format: string): NamedRule {
  const lesson = { kind: 'time', zone: null, order: null, year: null, format } as const;
  return { key: 'format', says: `timestamps: ${format}`, lessons: [lesson] };
}

function field({ key, value, because }: DraftKey, before: string): TemplateResult {
  const why = because === null ? '' : `: ${because}`;
  if (typeof value === 'object')
    return html`${Object.entries(value).map(([part, name]) => html`<label>${part}<input name=${`${before}${key}.${part}`} .value=${name} spellcheck="false" autocomplete="off" /></label>`)}`;
  return html`<label class=${key === 'line' || key === 'record' ? 'wide' : ''}>${before}${key}${terminal(why)}<input class="code" name=${before + key} .value=${String(value)} spellcheck="false" autocomplete="off" /></label>`;
}

/** What a person left in the fields of a key; `null` where nothing. */
function saidOf(
  { key, value }: DraftKey,
  before: string,
  said: (name: string) => string,
): string | Readonly<Record<string, string>> | null {
  if (typeof value !== 'object') return said(before + key) === '' ? null : said(before + key);
  const parts = Object.keys(value).flatMap((part): readonly [string, string][] => {
    const name = said(`${before}${key}.${part}`);
    return name === '' ? [] : [[part, name]];
  });
  return parts.length === 0 ? null : Object.fromEntries(parts);
}

customElements.define('draft-form', DraftForm);
