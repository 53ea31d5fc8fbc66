import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayUnderstood } from '../../src/report/find-wordings.ts';
import type { SeenWording } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import { type Choice, type Choices, keyOf, lackOf, noChoice, patternOf } from '../teach-rules.ts';
import { halfIn } from '../unit-pattern.ts';
import type { Previews } from './pattern-detail.ts';
import { patternDetail } from './pattern-detail.ts';
import { choosing, signalSelect, valueSelect, whoseSelect } from './rule-selects.ts';
import { firstLine } from './value-table.ts';

/** The wordings of messages, their numbers and names made one, and what each means. */
export function messageTable(
  messages: readonly SeenWording[],
  choices: Choices,
  previews: Previews,
): TemplateResult {
  return html`<div class="scroll"><table class="wordings messages">
    <thead><tr><th scope="col">Message</th><th scope="col" class="number">Rows</th><th scope="col">Meaning, value, half</th></tr></thead>
    <tbody>${messages.map((m) => messageRow(m, choices, previews))}</tbody>
  </table></div>`;
}

function messageRow(message: SeenWording, choices: Choices, previews: Previews): TemplateResult {
  const key = keyOf(message);
  const { name, understood } = message;
  const current = choices.get(key) ?? startOf(message);
  const lack = lackOf(message, current);
  return html`<tr @mouseenter=${citing(name, [message.first])}>
    <td class="long"><code><bdi>${terminal(name)}</bdi></code> ${firstLine(message)}
      ${patternDetail(key, name, current, patternOf(message, current), previews.get(key))}</td>
    <td class="number">${message.count.toLocaleString('en')}</td>
    <td class="meaning">${signalSelect(message, name, key, current)} ${valueSelect(current.signal, name, key, current, false)} ${whoseSelect(name, key, current)}
      ${lack === null ? nothing : html`<span class="inconclusive lack">${lack}</span>`}
      ${understood === null || choices.has(key) ? nothing : html`<span class="second">${terminal(sayUnderstood(message))}</span>`}</td>
  </tr>`;
}

/** Where a person begins: with what it means now. */
function startOf({ understood }: SeenWording): Choice {
  if (understood === null) return noChoice;
  return { ...noChoice, signal: understood.signal ?? 'ignore', value: understood.value ?? '' };
}

/** The names of units, and which pair and half each is. */
export function unitTable(
  units: readonly SeenWording[],
  choices: Choices,
  previews: Previews,
): TemplateResult {
  // One pattern names both halves of a pair.
  const inHand = new Set(
    units.flatMap((u) => {
      const choice = choices.get(keyOf(u));
      return choice?.signal === 'half' ? [patternOf(u, choice)] : [];
    }),
  );
  return html`<div class="scroll"><table class="wordings units">
    <thead><tr><th scope="col">Unit</th><th scope="col" class="number">Rows</th><th scope="col">Meaning</th></tr></thead>
    <tbody>${units.map((u) => unitRow(u, choices, previews, inHand))}</tbody>
  </table></div>`;
}

function unitRow(
  unit: SeenWording,
  choices: Choices,
  previews: Previews,
  inHand: ReadonlySet<string>,
): TemplateResult {
  const key = keyOf(unit);
  const { name, understood } = unit;
  const current = choices.get(key) ?? noChoice;
  const parts = halfIn(name);
  const option = (value: string, words: string): TemplateResult =>
    html`<option value=${value} ?selected=${current.signal === value}>${words}</option>`;
  return html`<tr @mouseenter=${citing(name, [unit.first])}>
    <td class="long"><code><bdi>${terminal(name === '' ? '(no name)' : name)}</bdi></code> ${firstLine(unit)}
      ${patternDetail(key, name, current, patternOf(unit, current), previews.get(key))}</td>
    <td class="number">${unit.count.toLocaleString('en')}</td>
    <td class="meaning"><select name="signal" aria-label=${`Meaning of unit ${terminal(name.slice(0, 60))}`} @change=${choosing(key, current, 'signal')}>
        ${option('', 'not recognised')}
        ${parts === null ? nothing : option('half', `half ${terminal(parts.half)} of ${terminal(parts.pair)}`)}
        ${option('pair', 'a pair of this name')}
        ${option('ignore', 'no controller: ignore it')}
      </select>
      ${current.signal === '' && parts !== null && inHand.has(parts.pattern) ? html`<span class="second">half ${terminal(parts.half)} of ${terminal(parts.pair)}, by the rule of the other half</span>` : nothing}
      ${understood === null || current.signal !== '' ? nothing : html`<span class="second">${terminal(sayUnderstood(unit))}</span>`}</td>
  </tr>`;
}
