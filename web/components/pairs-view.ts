import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { mostRows } from '../../src/report/shown-table.ts';
import { type Attention, compareText } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import { type Said, sayHealth, sayReasons, saySwap } from '../health-words.ts';
import type { PageState } from '../page-state.ts';
import type { PairModel } from '../protocol.ts';
import type { View } from '../view.ts';
import { attentionSummary } from './attention-summary.ts';
import { linesButton } from './lines-button.ts';
import { PageElement } from './page-element.ts';
import { pairLinks, pairName } from './pair-links.ts';
import './staff-strip.ts';

type Order = 'attention' | 'name' | 'swap';

interface Row {
  readonly model: PairModel;
  readonly attention: Attention;
}

/** Every pair in one list, those that need attention first. Its filter and order are inputs: `show`, `order`, `all`. */
export class PairsView extends PageElement {
  static override properties = { state: { attribute: false } };
  declare state: PageState;
  private ranked: { readonly site: PageState['site']; readonly rows: readonly Row[] } | null = null;

  override render(): TemplateResult {
    const { site, inputs } = this.state;
    if (site.pairs.length === 0)
      return html`<h1 class="verdict">Nothing is known of any pair.</h1>
        <p>No file names a pair. <a href="#sources">Sources</a> says how each was read.</p>`;
    const { show: words = '' } = inputs;
    const found = this.sorted(this.rows().filter((row) => this.isWanted(row, words.trim().toLowerCase())));
    return html`<h1 class="verdict">${attentionSummary(site)}</h1>
      ${this.controls(words)} ${found.length === 0 ? html`<p>No pair fits “${words}”.</p>` : this.table(found)}`;
  }

  private table(found: readonly Row[]): TemplateResult {
    const { all } = this.state.inputs;
    const isAll = all === 'yes';
    return html`${found.length > mostRows ? this.choice(found.length, isAll) : nothing}
      <div class="scroll"><table class="pairs">
        <thead>
          <tr>
            <th scope="col">Pair and modules</th><th scope="col">Last known state, and what is wrong</th>
            <th scope="col">History</th><th scope="col">Last replacement</th>
          </tr>
        </thead>
        <tbody>${found.slice(0, isAll ? found.length : mostRows).map((row) => this.row(row))}</tbody>
      </table></div>
      <p class="second">In the strip: heavy line active, thin line standby and ready, dashed not ready, no line nothing there, hatched unobserved, ticks what happened.</p>`;
  }

  /** It stands above the table, so that what has the focus does not move away under it. */
  private choice(count: number, isAll: boolean): TemplateResult {
    return html`<p class="second line">
      <span role="status">${isAll ? `All ${count} pairs.` : `The first ${mostRows} of ${count} pairs.`}</span>
      <button type="button" class="link whole no-print" @click=${() => this.give('all', isAll ? '' : 'yes')}>${isAll ? `Show the first ${mostRows}` : `Show all ${count}`}</button>
    </p>`;
  }

  /** All pairs in the order of attention. */
  private rows(): readonly Row[] {
    const { site } = this.state;
    if (this.ranked?.site === site) return this.ranked.rows;
    const models = new Map(site.pairs.map((p) => [p.health.pair, p]));
    const rows = site.attention.flatMap((attention) => {
      const model = models.get(attention.pair);
      return model === undefined ? [] : [{ model, attention }];
    });
    this.ranked = { site, rows };
    return rows;
  }

  private isWanted({ model: { health }, attention }: Row, words: string): boolean {
    if (words === '') return true;
    const said = sayHealth(health, isStale(attention), this.state.site.zone).words;
    const text = [
      health.pair,
      health.site ?? '',
      said,
      ...attention.reasons.map((r) => r.said),
      ...health.halves.flatMap((h) => [h.model ?? '', h.firmware ?? '']),
    ];
    return text.join(' ').toLowerCase().includes(words);
  }

  private order(): Order {
    const { order } = this.state.inputs;
    return order === 'name' || order === 'swap' ? order : 'attention';
  }

  private sorted(rows: readonly Row[]): readonly Row[] {
    const order = this.order();
    if (order === 'attention') return rows;
    if (order === 'name')
      return rows.toSorted((a, b) => compareText(a.model.health.pair, b.model.health.pair));
    const last = ({ model }: Row): number =>
      model.verification.swaps.at(-1)?.from ?? Number.NEGATIVE_INFINITY;
    return rows.toSorted((a, b) => Number(last(b) > last(a)) - Number(last(a) > last(b)));
  }

  private controls(words: string): TemplateResult {
    const order = (value: Order, said: string): TemplateResult =>
      html`<option value=${value} .selected=${this.order() === value}>${said}</option>`;
    return html`<form class="line no-print" @submit=${(event: Event) => event.preventDefault()}>
      <label>Show <input type="search" placeholder="name, state, model or firmware" .value=${words} @input=${this.onWords} /></label>
      <label>Order <select @change=${this.onOrder}>
          ${order('attention', 'what needs attention first')}${order('name', 'by name')}${order('swap', 'last replacement first')}
        </select></label>
    </form>`;
  }

  private row({ model, attention }: Row): TemplateResult {
    const { health } = model;
    const { site, chosen } = this.state;
    const state = sayHealth(health, isStale(attention), site.zone);
    const swap = saySwap(model, site.zone);
    const what = `${health.pair}: ${state.words}`;
    const cite = citing(what, health.evidence);
    const reasons = sayReasons(attention, health.state);
    return html`<tr data-pair=${health.pair} aria-current=${health.pair === chosen.pair ? 'true' : nothing} @mouseenter=${cite} @focusin=${cite}>
      <th scope="row" class="long">${pairName(health.pair)}${pairLinks(health.pair)}<div class="second">${terminal(sayModules(health.halves))}</div></th>
      <td><div class=${state.look}>${state.words} ${linesButton(what, health.evidence)}</div>${reasons.length === 0 ? nothing : html`<div class="long">${reasons.map(reasonPart)}</div>`}</td>
      <td><staff-strip .staff=${health.staff} .zone=${site.zone}></staff-strip></td>
      <td class=${swap.look}>${swap.words}</td>
    </tr>`;
  }

  private give(name: string, value: string): void {
    const detail = { [name]: value === '' ? null : value };
    this.dispatchEvent(new CustomEvent('inputs', { bubbles: true, detail }));
  }

  private onWords({ target }: Event): void {
    if (target instanceof HTMLInputElement) this.give('show', target.value);
  }

  private onOrder({ target }: Event): void {
    if (target instanceof HTMLSelectElement)
      this.give('order', target.value === 'attention' ? '' : target.value);
  }
}

function reasonPart({ words, look }: Said, index: number): TemplateResult {
  return html`${index === 0 ? '' : '; '}<span class=${look === '' ? 'second' : look}>${terminal(words)}</span>`;
}

/** Model and firmware of the halves; once where they are the same. */
function sayModules(halves: PairModel['health']['halves']): string {
  const said = halves.map((h) => `${h.model ?? 'model not known'}, ${h.firmware ?? 'firmware not known'}`);
  const [first] = said;
  if (first !== undefined && said.every((one) => one === first)) return first;
  return halves.map(({ half }, index) => `${half}: ${said[index]}`).join('; ');
}

function isStale({ reasons }: Attention): boolean {
  return reasons.some(({ kind }) => kind === 'stale');
}

customElements.define('pairs-view', PairsView);

export const pairsView: View = {
  id: 'pairs',
  title: 'Pairs',
  render: (state) => html`<pairs-view .state=${state}></pairs-view>`,
};
