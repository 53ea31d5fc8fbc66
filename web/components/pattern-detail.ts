import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { RulePreview } from '../rule-previews.ts';
import type { Choice } from '../teach-rules.ts';
import { choosing } from './rule-selects.ts';

/** What the rules would do, by the keys of their wordings. */
export type Previews = ReadonlyMap<string, RulePreview>;

/** The pattern of a rule, folded, with what it would do beside it; what is wrong with it is said whether it is folded or not. */
export function patternDetail(
  key: string,
  name: string,
  current: Choice,
  pattern: string,
  preview: RulePreview | undefined,
): TemplateResult | typeof nothing {
  if (current.signal === '' || current.signal === 'ignore') return nothing;
  const id = `pattern-${hashed(key)}`;
  const isWrong = preview !== undefined && !preview.isOfUse;
  return html`<details class="pattern" ?open=${isWrong}>
      <summary>Pattern<span class="hidden"> of ${terminal(name.slice(0, 60))}</span></summary>
      <input class="code" name="pattern" aria-label=${`Pattern of ${terminal(name.slice(0, 60))}`} aria-describedby=${id} aria-invalid=${isWrong} .value=${pattern} @input=${choosing(key, current, 'pattern')} spellcheck="false" autocomplete="off" />
      ${(preview?.lines ?? []).map(({ at, says }) => html`<p class="second long">Line ${at.line.toLocaleString('en')}: ${terminal(says)}</p>`)}
    </details>
    <p class=${isWrong ? 'inconclusive said' : 'second said'} id=${id} role="status">${preview?.says ?? ''}</p>`;
}

/** A name for an element: a key may hold anything. */
function hashed(key: string): string {
  let hash = 7;
  for (const character of key) hash = (hash * 31 + (character.codePointAt(0) ?? 0)) % 4_294_967_296;
  return hash.toString(36);
}
