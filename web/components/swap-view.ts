import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { bringUps as bringUpsChart } from '../../src/charts/bring-ups.ts';
import { bringUpRows } from '../../src/report/bring-up-rows.ts';
import { terminal } from '../../src/report/escape.ts';
import { type FleetFigure, figureOf } from '../../src/report/fleet-figures.ts';
import { sayOpen } from '../../src/report/open-words.ts';
import { sayDatedBounds, sayInstant } from '../../src/report/words.ts';
import type { Instant, Interval, Swap } from '../../src/vocabulary.ts';
import type { PageState } from '../page-state.ts';
import { putOnPaper } from '../paper.ts';
import type { PairModel } from '../protocol.ts';
import type { View } from '../view.ts';
import { htmlOf, swapReports } from '../view-reports.ts';
import { exposureLine, findingsSection, marksTable } from './annex-tables.ts';
import { isAllKnown, notKnownOfPair } from './not-known.ts';
import { PageElement } from './page-element.ts';
import { pairLinks, recordLink } from './pair-links.ts';
import { checksSection, halvesTable, reasonsList, stepsTable } from './swap-tables.ts';
import './chart-row.ts';
import './report-form.ts';
import './save-bar.ts';
import type { Reports } from './save-bar.ts';
import './shown-table.ts';
import './staff-figure.ts';

/** A verdict of more characters stands in smaller letters: the staff is to be seen under it. */
const longVerdict = 110;
/** More than these would make no picture: the last ones are drawn. */
const mostBringUps = 24;
const mostReplacements = 5;

/** The record of one swap: verdict and what is wrong, the staff, before and after, the steps, the checks, findings. */
export class SwapView extends PageElement {
  static override properties = {
    state: { attribute: false },
    looked: { state: true },
    at: { state: true },
    near: { state: true },
  };
  declare state: PageState;
  /** What the staff shows or marks; the steps follow. */
  declare looked: Interval | null;
  /** The instant of the row that is looked at. */
  declare at: Instant | null;
  /** Where the staff is pointed at. */
  declare near: Interval | null;
  private chosenBefore: PageState['chosen'] | null = null;
  private judging: Promise<unknown> = Promise.resolve();
  private homes = new WeakMap<PairModel['health'], Map<number, Interval>>();
  private figures = new WeakMap<Swap['bringUps'], readonly FleetFigure[]>();
  private reports: { readonly of: Swap; readonly given: Reports } | null = null;

  constructor() {
    super();
    this.looked = null;
    this.at = null;
    this.near = null;
    this.addEventListener('at', (event) => {
      if (event instanceof CustomEvent) this.at = event.detail;
    });
    this.addEventListener('near', (event) => {
      if (event instanceof CustomEvent) this.near = event.detail;
    });
  }

  override willUpdate(_: PropertyValues<this>): void {
    if (this.chosenBefore !== this.state.chosen) this.looked = null;
    this.chosenBefore = this.state.chosen;
  }

  override render(): TemplateResult {
    const { site, chosen } = this.state;
    const model = site.pairs.find((p) => p.health.pair === chosen.pair);
    if (model === undefined) return html`<h1 class="verdict">No file names a pair.</h1>`;
    const swap = model.verification.swaps[chosen.swap];
    if (swap !== undefined) return this.record(model, swap);
    this.reports = null;
    return html`<div class="top">${this.chooser()}</div>
      <p class="second">${notKnownOfPair(model)}</p>
      <h1 class="verdict">No replacement of ${terminal(model.health.pair)} ${isAllKnown(site) ? 'is in these logs' : 'was found in the rows recognised'}: no module was removed and another put in.</h1>
      ${this.replacements()}
      ${this.staff(model, model.health.staff)}${this.happened(model)}
      ${this.bringUps(model.health.bringUps, model.health.staff.limitSeconds)}`;
  }

  override updated(): void {
    const { reports } = this;
    putOnPaper(this, reports === null ? null : { of: reports.of, write: () => htmlOf(reports.given) });
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

  private readonly onJudging = (event: Event): void => {
    if (event instanceof CustomEvent) this.judging = event.detail;
  };

  /** The swap was judged with the last field that was left, and the view drawn with it. */
  private readonly settled = async (): Promise<void> => {
    await this.judging;
    await new Promise((resolve) => setTimeout(resolve));
  };

  private record(model: PairModel, swap: Swap): TemplateResult {
    const { zone } = this.state.site;
    const period = sayDatedBounds({ earliest: swap.from, time: swap.to }, zone);
    return html`<div class="top">${this.chooser()}<save-bar .reports=${this.reportsOf(model, swap)} .settled=${this.settled}></save-bar></div>
      <p class="second">Replacement at ${terminal(swap.pair)}${swap.site === null ? '' : `, ${terminal(swap.site)}`}, ${period}. ${notKnownOfPair(model)}</p>
      <h1 class=${swap.statement.length > longVerdict ? 'verdict long' : 'verdict'}>${terminal(swap.statement)}</h1>
      ${swap.open === null ? nothing : html`<p>${terminal(sayOpen(swap.open, zone, swap.from))}</p>`}
      ${reasonsList(swap)}
      ${this.staff(model, swap)}
      <section id="swap-halves"><h2>Before and after</h2>${halvesTable(swap)}</section>
      ${this.steps(swap)}
      ${this.bringUps(swap.bringUps, swap.staff.limitSeconds)}
      <section id="swap-checks"><h2>Checks</h2>${checksSection(swap)}</section>
      ${findingsSection(model.verification, swap, zone)}
      <section id="swap-exposure"><h2>Exposure</h2>${exposureLine(swap, zone)}</section>
      <section id="swap-job" class="no-print">
        <h2>Work order and sign-off</h2>
        <report-form .model=${model} .swap=${swap} .session=${this.state.session} @judging=${this.onJudging}></report-form>
        <save-bar .reports=${this.reportsOf(model, swap)} .settled=${this.settled} .isShort=${true}></save-bar>
      </section>`;
  }

  private steps(swap: Swap): TemplateResult {
    const looked = this.looked ?? swap;
    const steps = swap.steps.filter((s) => s.time >= looked.from && s.earliest <= looked.to);
    return html`<section id="swap-steps">
      <h2>Steps</h2>
      ${
        steps.length === swap.steps.length
          ? nothing
          : html`<p class="second" role="status">${steps.length} of ${swap.steps.length} steps lie in what the staff shows or marks.</p>`
      }
      ${stepsTable(swap, steps, this.state.site.zone, this.near)}
    </section>`;
  }

  /** The same object for the same swap and job: it is written once. */
  private reportsOf(model: PairModel, swap: Swap): Reports {
    if (this.reports?.of !== swap)
      this.reports = { of: swap, given: swapReports(() => this.state, model, swap) };
    return this.reports.given;
  }

  /** Of a pair without a swap: what happened in what the staff shows or marks. */
  private happened({ health }: PairModel): TemplateResult {
    const { from, to } = this.looked ?? health.staff;
    const marks = health.marks.filter((m) => m.time >= from && m.earliest <= to);
    return html`<section id="swap-happened"><h2>What happened</h2>${marksTable(marks, this.state.site.zone, this.near)}</section>`;
  }

  private staff({ health }: PairModel, span: Interval): TemplateResult {
    return html`<section id="swap-staff">
      <h2>The pair over time</h2>
      <staff-figure
        .health=${health}
        .home=${this.homeOf(health, span)}
        .zone=${this.state.site.zone}
        .span=${this.state.span}
        .at=${this.at}
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
    const figures = this.figures.get(bringUps) ?? this.figuresOf(bringUps, limitSeconds);
    this.figures.set(bringUps, figures);
    if (figures.length === 0) return nothing;
    return html`<section id="swap-bring-ups">
      <h2>Bring-ups from their start</h2>
      <chart-row .figures=${figures}></chart-row>
    </section>`;
  }

  private figuresOf(bringUps: Swap['bringUps'], limitSeconds: number): readonly FleetFigure[] {
    return figureOf(bringUpsChart, bringUpRows(bringUps.slice(-mostBringUps), limitSeconds));
  }
}

customElements.define('swap-view', SwapView);

export const swapView: View = {
  id: 'swap',
  title: 'Swap record',
  render: (state) => html`<swap-view .state=${state}></swap-view>`,
};
