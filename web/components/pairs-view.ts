import { html, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { compareText } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import { attentionRank, sayHealth, saySwap } from '../health-words.ts';
import type { PageState } from '../page-state.ts';
import type { PairModel } from '../protocol.ts';
import type { View } from '../view.ts';
import { linesButton } from './lines-button.ts';
import { isAllKnown } from './not-known.ts';
import { PageElement } from './page-element.ts';
import './staff-strip.ts';

type Order = 'attention' | 'name' | 'swap';

/** Every pair in one list, those that need attention first. */
export class PairsView extends PageElement {
  static override properties = {
    state: { attribute: false },
    words: { state: true },
    order: { state: true },
  };
  declare state: PageState;
  declare words: string;
  declare order: Order;

  constructor() {
    super();
    this.words = '';
    this.order = 'attention';
  }

  override render(): TemplateResult {
    const { pairs } = this.state.site;
    const shown = this.sorted(pairs.filter((p) => this.isWanted(p)));
    return html`<h1 class="verdict">${this.summary()}</h1>
      ${
        pairs.length === 0
          ? html`<p>No file speaks of a pair. <a href="#sources">Sources</a> says how each was understood.</p>`
          : html`${this.controls()}
            ${
              shown.length === 0
                ? html`<p>No pair fits “${this.words}”.</p>`
                : html`<div class="scroll"><table class="pairs">
                  <thead>
                    <tr>
                      <th scope="col">Pair</th><th scope="col">State where its log ends</th>
                      <th scope="col">Over its whole log</th><th scope="col">Last replacement</th>
                      <th scope="col">Modules</th>
                    </tr>
                  </thead>
                  <tbody>${shown.map((p) => this.row(p))}</tbody>
                </table></div>
                <p class="second">In the strip: heavy line active, thin line standby and ready, dashed not ready, no line nothing there, hatched unobserved, ticks what happened.</p>`
            }`
      }
`;
  }

  private summary(): string {
    const { pairs } = this.state.site;
    if (pairs.length === 0) return 'Nothing is known of any pair.';
    const open = pairs.filter((p) => attentionRank(p, this.end()) < 4).length;
    const all = pairs.length === 1 ? 'One pair' : `${pairs.length} pairs`;
    if (open === 0) return `${all}; ${this.nothingWrong()}`;
    return `${all}; ${open === 1 ? 'one needs' : `${open} need`} attention.`;
  }

  /** That nothing needs attention can be said only where all was recognised, and every state is known. */
  private nothingWrong(): string {
    const { site } = this.state;
    const unknown = site.pairs.filter(({ health }) => health.state === 'unknown').length;
    if (unknown > 0)
      return `the state of ${unknown === site.pairs.length ? 'every pair' : unknown} is not known.`;
    if (!isAllKnown(site)) return 'nothing that needs attention was found in the rows recognised.';
    return site.pairs.length === 1 ? 'it needs no attention.' : 'none needs attention.';
  }

  private end(): number {
    return this.state.site.to ?? 0;
  }

  private isWanted({ health }: PairModel): boolean {
    const words = this.words.trim().toLowerCase();
    const said = sayHealth(health, this.end(), this.state.site.zone).words;
    const text = [
      health.pair,
      health.site ?? '',
      said,
      ...health.halves.flatMap((h) => [h.model ?? '', h.firmware ?? '']),
    ];
    return text.join(' ').toLowerCase().includes(words);
  }

  private sorted(pairs: readonly PairModel[]): readonly PairModel[] {
    const byName = pairs.toSorted((a, b) => compareText(a.health.pair, b.health.pair));
    if (this.order === 'name') return byName;
    const last = (p: PairModel): number => p.verification.swaps.at(-1)?.from ?? 0;
    if (this.order === 'swap') return byName.toSorted((a, b) => last(b) - last(a));
    return byName.toSorted((a, b) => attentionRank(a, this.end()) - attentionRank(b, this.end()));
  }

  private controls(): TemplateResult {
    const order = (value: Order, words: string): TemplateResult =>
      html`<option value=${value} ?selected=${this.order === value}>${words}</option>`;
    return html`<form class="line" @submit=${(event: Event) => event.preventDefault()}>
      <label>Show <input type="search" placeholder="name, state, model or firmware" .value=${this.words} @input=${this.onWords} /></label>
      <label>Order <select @change=${this.onOrder}>
          ${order('attention', 'what needs attention first')}${order('name', 'by name')}${order('swap', 'last replacement first')}
        </select></label>
    </form>`;
  }

  private row(model: PairModel): TemplateResult {
    const { health } = model;
    const { zone } = this.state.site;
    const state = sayHealth(health, this.end(), zone);
    const swap = saySwap(model, zone);
    const what = `${health.pair}: ${state.words}`;
    const cite = citing(what, health.evidence);
    const last = model.verification.swaps.length - 1;
    const open = (): boolean =>
      this.dispatchEvent(
        new CustomEvent('choose', { bubbles: true, detail: { pair: health.pair, swap: Math.max(0, last) } }),
      );
    return html`<tr @mouseenter=${cite} @focusin=${cite}>
      <th scope="row" class="long"><button type="button" class="link" @click=${open}>${terminal(health.pair)}</button></th>
      <td class=${state.look}>${state.words} ${linesButton(what, health.evidence)}</td>
      <td><staff-strip .staff=${health.staff} .zone=${zone}></staff-strip></td>
      <td class=${swap.look}>${swap.words}</td>
      <td class="long">${health.halves.map((h) => html`<div>${terminal(h.half)}: ${terminal(h.model ?? 'model not known')}, ${terminal(h.firmware ?? 'firmware not known')}</div>`)}</td>
    </tr>`;
  }

  private onWords({ target }: Event): void {
    if (target instanceof HTMLInputElement) this.words = target.value;
  }

  private onOrder({ target }: Event): void {
    if (!(target instanceof HTMLSelectElement)) return;
    this.order = target.value === 'name' || target.value === 'swap' ? target.value : 'attention';
  }
}

customElements.define('pairs-view', PairsView);

export const pairsView: View = {
  id: 'pairs',
  title: 'Pairs',
  render: (state) => html`<pairs-view .state=${state}></pairs-view>`,
};
