import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { type SeenWording, stateSignals } from '../../src/vocabulary.ts';
import { type Choice, noChoice, othersFor, valuesOf } from '../teach-rules.ts';

/** What a person chose for a wording, by its key; bubbles as `choice`. */
export interface Chosen {
  readonly key: string;
  readonly choice: Choice;
}

const whose: readonly (readonly [string, string])[] = [
  ['', 'as the row says'],
  ['pair', 'the pair'],
  ['active', 'the active half'],
  ['standby', 'the standby half'],
  ['other', 'the other half'],
];

/** How much of a wording a field is told by. */
const mostNamed = 60;

function label(what: string, of: string): string {
  return `${what} of ${terminal(of.slice(0, mostNamed))}`;
}

function option(value: string, chosen: string, words = value): TemplateResult {
  return html`<option value=${value} ?selected=${value === chosen}>${words}</option>`;
}

/** Tells those above of another choice, from a field of it. */
export function choosing(
  key: string,
  current: Choice,
  part: keyof Choice,
): (event: { readonly currentTarget: EventTarget | null }) => void {
  return ({ currentTarget }) => {
    if (!(currentTarget instanceof HTMLSelectElement || currentTarget instanceof HTMLInputElement)) return;
    const changed = { ...current, [part]: currentTarget.value };
    const isKept = part !== 'signal' || valuesOf(changed.signal).includes(changed.value);
    const detail: Chosen = { key, choice: isKept ? changed : { ...changed, value: '' } };
    currentTarget.dispatchEvent(new CustomEvent('choice', { bubbles: true, detail }));
  };
}

/** Which signal a parameter or a message means. */
export function signalSelect(
  { kind }: SeenWording,
  text: string,
  key: string,
  current: Choice,
): TemplateResult {
  const { signal } = current;
  return html`<select name="signal" aria-label=${label('Meaning', text)} @change=${choosing(key, current, 'signal')}>
    ${option('', signal, kind === 'message' ? 'not recognised' : 'choose')}
    <optgroup label="State">${stateSignals.map((s) => option(s, signal))}</optgroup>
    <optgroup label=${kind === 'message' ? 'Happening' : 'Gauge'}>${othersFor(kind).map((s) => option(s, signal))}</optgroup>
    ${option('ignore', signal, 'nothing: ignore it')}
  </select>`;
}

/** Which of its signal's values is meant; nothing where the signal has none to choose from. */
export function valueSelect(
  signal: string,
  text: string,
  key: string,
  current: Choice,
  isOfParameter: boolean,
): TemplateResult | typeof nothing {
  const values = valuesOf(signal);
  if (values.length === 0) return nothing;
  const { value } = current;
  return html`<select name="value" aria-label=${label('Value', text)} @change=${choosing(key, current, 'value')}>
    ${option('', value, isOfParameter ? 'not recognised' : 'choose')}${values.map((v) => option(v, value))}
    ${isOfParameter ? option('ignore', value, 'nothing: ignore it') : nothing}
  </select>`;
}

/** A signal and its value at once, for a value of a parameter of which nothing is known yet. Fires both choices. */
export function meaningSelect(text: string, key: string, parameterKey: string): TemplateResult {
  const onChange = ({ currentTarget }: Event): void => {
    if (!(currentTarget instanceof HTMLSelectElement)) return;
    const [signal = '', value = ''] = currentTarget.value.split(' ');
    const tell = (detail: Chosen): void => {
      currentTarget.dispatchEvent(new CustomEvent('choice', { bubbles: true, detail }));
    };
    if (signal === 'ignore') tell({ key, choice: { ...noChoice, value: 'ignore' } });
    if (value === '') return;
    tell({ key, choice: { ...noChoice, value } });
    tell({ key: parameterKey, choice: { ...noChoice, signal } });
  };
  return html`<select name="value" aria-label=${label('Meaning', text)} @change=${onChange}>
    <option value="">not recognised</option>
    ${stateSignals.map((signal) => {
      const values = valuesOf(signal);
      if (values.length === 0) return nothing;
      return html`<optgroup label=${signal}>${values.map((v) => html`<option value=${`${signal} ${v}`}>${signal}: ${v}</option>`)}</optgroup>`;
    })}
    <option value="ignore">nothing: ignore it</option>
  </select>`;
}

/** Which half, or the pair, a message is about. */
export function whoseSelect(text: string, key: string, current: Choice): TemplateResult | typeof nothing {
  if (current.signal === '' || current.signal === 'ignore') return nothing;
  return html`<select name="whose" aria-label=${label('Half', text)} @change=${choosing(key, current, 'whose')}>
    ${whose.map(([value, words]) => option(value, current.whose, words))}
  </select>`;
}
