import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { NamedRule } from '../teach-rules.ts';

/** What stands in the bar: the rules of use, those about files among them, what they would come to, and a way back. */
export interface RulesInHand {
  /** Those that would be applied. */
  readonly rules: readonly NamedRule[];
  /** How files are read: they stand nowhere else in the tables. */
  readonly ofFiles: readonly NamedRule[];
  /** Those that would do nothing. */
  readonly idle: number;
  /** `null` until it is counted. */
  readonly effect: string | null;
  readonly undo: number;
}

interface RuleActions {
  apply(): void;
  drop(key: string): void;
  undo(): void;
}

/** The rules in hand, applied at once by one button; what they would do is said before. */
export function rulesBar(
  { rules, ofFiles, idle, effect, undo }: RulesInHand,
  { apply, drop, undo: goBack }: RuleActions,
): TemplateResult | typeof nothing {
  if (rules.length === 0 && idle === 0 && undo === 0) return nothing;
  const count = rules.length === 1 ? 'one rule' : `${rules.length.toLocaleString('en')} rules`;
  return html`<div class="rules-bar no-print" role="region" aria-label="Rules to apply">
    ${
      ofFiles.length === 0
        ? nothing
        : html`<ul id="file-rules">${ofFiles.map(
            ({ key, says }) =>
              html`<li><span class="long">${terminal(says)}</span> <button type="button" class="link" @click=${() => drop(key)}>Take back<span class="hidden"> ${terminal(says)}</span></button></li>`,
          )}</ul>`
    }
    ${idle === 0 ? nothing : html`<p class="inconclusive">${idle === 1 ? 'One rule matches nothing and is not applied.' : `${idle} rules match nothing and are not applied.`}</p>`}
    <p role="status" id="effect">${rules.length === 0 ? '' : (effect ?? 'Counting the rows that would be recognised.')}</p>
    <p class="choices">
      ${rules.length === 0 ? nothing : html`<button type="button" id="apply-rules" @click=${apply}>Apply ${count} and read again</button>`}
      ${undo === 0 ? nothing : html`<button type="button" id="undo" @click=${goBack}>Undo the last rules</button>`}
    </p>
  </div>`;
}
