import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { listed, sayUnderstood } from '../../src/report/find-wordings.ts';
import type { SeenWording } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import {
  type Choice,
  type Choices,
  keyOf,
  noChoice,
  type ParameterGroup,
  signalOf,
  valuesOf,
} from '../teach-rules.ts';
import { linesButton } from './lines-button.ts';
import { meaningSelect, signalSelect, valueSelect } from './rule-selects.ts';

/** Longer names and values are cut where they are shown. */
const longest = 160;

/** The parameters, each with the values it takes, and what each means. */
export function valueTable(groups: readonly ParameterGroup[], choices: Choices): TemplateResult {
  return html`<div class="scroll"><table class="wordings values">
    <thead><tr><th scope="col">Parameter and its values</th><th scope="col" class="number">Rows</th><th scope="col">Meaning</th></tr></thead>
    ${groups.map((group) => parameterRows(group, choices))}
  </table></div>`;
}

function parameterRows({ parameter, values }: ParameterGroup, choices: Choices): TemplateResult {
  const { name, different = 0, understood } = parameter;
  const key = keyOf(parameter);
  const signal = signalOf(parameter, choices);
  const current = { ...(choices.get(key) ?? noChoice), signal };
  const shown = values.length > 0 ? '' : sayDifferent(parameter);
  const isKnown = understood !== null && different > 0;
  return html`<tbody>
    <tr class="parameter" @mouseenter=${citing(name, [parameter.first])}>
      <th scope="rowgroup" class="long"><bdi>${terminal(name.slice(0, longest))}</bdi>${shown === '' ? nothing : html` <span class="second">${shown}</span>`} ${firstLine(parameter)}</th>
      <td class="number">${parameter.count.toLocaleString('en')}</td>
      <td>${signalSelect(parameter, name, key, current)}${isKnown ? html` <span class="second">${terminal(sayUnderstood(parameter))}</span>` : nothing}</td>
    </tr>
    ${signal === 'ignore' ? nothing : values.map((value) => valueRow(value, signal, choices))}
  </tbody>`;
}

function valueRow(value: SeenWording, signal: string, choices: Choices): TemplateResult {
  const key = keyOf(value);
  const current = choices.get(key) ?? { ...noChoice, value: value.understood?.value ?? '' };
  const text = value.value ?? '';
  return html`<tr @mouseenter=${citing(listed(value), [value.first])}>
    <td class="long value"><code><bdi>${terminal(text.slice(0, longest))}</bdi></code> ${firstLine(value)}</td>
    <td class="number">${value.count.toLocaleString('en')}</td>
    <td>${meaningField(value, signal, current)}</td>
  </tr>`;
}

/** What a value means: of its parameter's signal, or with it where nothing is known of that yet. */
function meaningField(value: SeenWording, signal: string, current: Choice): TemplateResult | typeof nothing {
  const key = keyOf(value);
  if (signal === '' && current.value === '')
    return meaningSelect(listed(value), key, keyOf({ ...value, kind: 'parameter', value: null }));
  if (signal !== '' && valuesOf(signal).length === 0)
    return html`<span class="second">as it is printed</span>`;
  return signal === ''
    ? html`<span class="second">ignored</span>`
    : valueSelect(signal, listed(value), key, current, true);
}

/** The file and line of the first row, with a button to it. */
export function firstLine(wording: SeenWording): TemplateResult {
  const { file, line } = wording.first;
  return html`<span class="place second">${terminal(file)}, line ${line.toLocaleString('en')} ${linesButton(listed(wording), [wording.first])}</span>`;
}

/** Where a parameter takes so many values that they are numbers or texts. */
function sayDifferent({ different = 0, first }: SeenWording): string {
  if (different === 0) return 'never has a value';
  const many = different >= mostTold ? `${mostTold} or more` : different.toLocaleString('en');
  return `${many} different values, as in "${terminal(first.text.slice(0, 60))}": a number or a text`;
}

/** More values are not told apart by the survey. */
const mostTold = 40;
