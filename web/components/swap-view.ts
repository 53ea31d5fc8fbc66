import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { bringUps as bringUpsChart } from '../../src/charts/bring-ups.ts';
import { bringUpRows } from '../../src/report/bring-up-rows.ts';
import { terminal } from '../../src/report/escape.ts';
import { sayOpen } from '../../src/report/open-words.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { Interval, Swap } from '../../src/vocabulary.ts';
import type { PageState } from '../page-state.ts';
import type { PairModel } from '../protocol.ts';
import type { View } from '../view.ts';
import { exposureLine, findingsSection, marksTable } from './annex-tables.ts';
import { isAllKnown, notKnownOfPair } from './not-known.ts';
import { PageElement } from './page-element.ts';
import { pairLinks, recordLink } from './pair-links.ts';
import { checksTable, halvesTable, reasonsList, stepsTable } from './swap-tables.ts';
import './chart-figure.ts';
import './report-form.ts';
import './staff-figure.ts';

/** More than these would make no picture: the last ones are drawn. */
const mostBringUps = 24;
const mostReplacements = 5;

/** The record of one swap: verdict, before and after, the staff, the steps, the checks, the bring-ups, the report. */
export class SwapView extends PageElement {
  static override properties = { state: { attribute: false }, looked: { state: true } };
  declare state: PageState;
  /** What the staff shows or marks; the steps follow. */
  declare looked: Interval | null;
  private chosenBefore: PageState['chosen'] | null = null;
  private homes = new WeakMap<PairModel['health'], Map<number, Interval>>();
  private bringUpSpecs = new WeakMap<Swap['bringUps'], ReturnType<typeof bringUpsChart.spec>>();

  constructor() {
    super();
    this.looked = null;
  }

  override willUpdate(_: PropertyValues<this>): void {
    if (this.chosenBefore !== this.state.chosen) this.looked = null;
    this.chosenBefore = this.state.chosen;
  }

  override render(): TemplateResult {
    const { site, chosen } = this.state;
    const model = site.pairs.find((p) => p.health.pair === chosen.pair);
    if (model === undefined) return html`<h1 class="verdict">No file speaks of a pair.</h1>`;
    const swap = model.verification.swaps[chosen.swap];
    return html`${this.chooser()}${notKnownOfPair(model)}
      ${
        swap === undefined
          ? html`<h1 class="verdict">No replacement of ${terminal(model.health.pair)} ${isAllKnown(site) ? 'is in these logs' : 'was found in the rows recognised'}: no module was removed and another put in.</h1>
            ${this.replacements()}
            ${this.staff(model, model.health.staff)}${this.bringUps(model.health.bringUps, model.health.staff.limitSeconds)}${this.happened(model)}`
          : this.record(model, swap)
      }`;
  }

  private chooser(): TemplateResult {
    const { site, chosen } = this.state;
    const options = site.pairs.flatMap(({ health, verification }) => {
      const swaps: readonly (Swap | null)[] = verification.swaps.length === 0 ? [null] : verification.swaps;
      return swaps.map((swap, index) => ({
        detail: { pair: health.pair, swap: index },
        words: `${terminal(health.pair)}, ${swap === null ? 'no replacement' : sayInstant(swap.from, site.zone)}`,
      }));
    });
    const choose = ({ target }: Event): void => {
      const detail = target instanceof HTMLSelectElement ? options[target.selectedIndex]?.detail : undefined;
      if (detail !== undefined) this.dispatchEvent(new CustomEvent('choose', { bubbles: true, detail }));
    };
    return html`<p class="line no-print"><label>Record of <select id="swap" @change=${choose}>
      ${options.map(({ detail, words }) => html`<option .selected=${detail.pair === chosen.pair && detail.swap === chosen.swap}>${words}</option>`)}
    </select></label>${pairLinks(chosen.pair, 'swap')}</p>`;
  }

  /** Where the chosen pair has none: the replacements that there are, the worst pair first. */
  private replacements(): TemplateResult | typeof nothing {
    const { attention, pairs, zone } = this.state.site;
    const swapped = attention.flatMap(({ pair }) => {
      const last = pairs.find((p) => p.health.pair === pair)?.verification.swaps.at(-1);
      return last === undefined ? [] : [html`<li>${recordLink(pair)}, ${sayInstant(last.from, zone)}</li>`];
    });
    if (swapped.length === 0) return nothing;
    return html`<p class="no-print">Replacements of other pairs:</p><ul class="no-print">${swapped.slice(0, mostReplacements)}</ul>`;
  }

  private record(model: PairModel, swap: Swap): TemplateResult {
    const { zone } = this.state.site;
    const looked = this.looked ?? swap;
    const steps = swap.steps.filter((s) => s.time >= looked.from && s.earliest <= looked.to);
    return html`<p class="second">Replacement of pair ${terminal(swap.pair)}${swap.site === null ? '' : `, ${terminal(swap.site)}`}, ${sayInstant(swap.from, zone)} to ${sayInstant(swap.to, zone)}</p>
      <h1 class="verdict">${terminal(swap.statement)}</h1>
      ${swap.open === null ? nothing : html`<p>${terminal(sayOpen(swap.open, zone, swap.from))}</p>`}
      ${reasonsList(swap)}
      <section><h2>Before and after</h2>${halvesTable(swap)}</section>
      ${this.staff(model, swap)}
      <section>
        <h2>Steps</h2>
        ${
          steps.length === swap.steps.length
            ? nothing
            : html`<p class="second" role="status">${steps.length} of ${swap.steps.length} steps lie in what the staff shows or marks.</p>`
        }
        ${stepsTable(swap, steps, zone)}
      </section>
      ${this.bringUps(swap.bringUps, swap.staff.limitSeconds)}
      <section><h2>Checks</h2>${checksTable(swap)}</section>
      <section><h2>Exposure</h2>${exposureLine(swap, zone)}</section>
      ${findingsSection(model.verification, swap, zone)}
      <section class="no-print"><h2>Report</h2><report-form .model=${model} .swap=${swap} .zone=${zone} .session=${this.state.session}></report-form></section>`;
  }

  /** Of a pair without a swap: what happened in what the staff shows or marks. */
  private happened({ health }: PairModel): TemplateResult {
    const { from, to } = this.looked ?? health.staff;
    const marks = health.marks.filter((m) => m.time >= from && m.earliest <= to);
    return html`<section><h2>What happened</h2>${marksTable(marks, this.state.site.zone)}</section>`;
  }

  private staff({ health }: PairModel, span: Interval): TemplateResult {
    return html`<section>
      <h2>The pair over time</h2>
      <staff-figure
        .health=${health}
        .home=${this.homeOf(health, span)}
        .zone=${this.state.site.zone}
        .span=${this.state.span}
        @look=${(event: Event) => {
          if (event instanceof CustomEvent) this.looked = event.detail;
        }}
      ></staff-figure>
    </section>`;
  }

  /** The same object for the same swap: another one would take the staff back to it. */
  private homeOf(health: PairModel['health'], { from, to }: Interval): Interval {
    const known = this.homes.get(health) ?? new Map<number, Interval>();
    this.homes.set(health, known);
    const home = known.get(from) ?? { from, to };
    known.set(from, home);
    return home;
  }

  private bringUps(bringUps: Swap['bringUps'], limitSeconds: number): TemplateResult | typeof nothing {
    const rows = bringUpRows(bringUps.slice(-mostBringUps), limitSeconds);
    if (rows.length === 0) return nothing;
    const spec = this.bringUpSpecs.get(bringUps) ?? bringUpsChart.spec(rows);
    this.bringUpSpecs.set(bringUps, spec);
    return html`<section>
      <h2>Bring-ups from their start</h2>
      <chart-figure .spec=${spec} .caption=${bringUpsChart.describe(rows)}></chart-figure>
    </section>`;
  }
}

customElements.define('swap-view', SwapView);

export const swapView: View = {
  id: 'swap',
  title: 'Swap record',
  render: (state) => html`<swap-view .state=${state}></swap-view>`,
};
