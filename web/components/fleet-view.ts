import { html, type PropertyValues, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { terminal } from '../../src/report/escape.ts';
import { fleetReports } from '../../src/report/fleet-reports.ts';
import { type FleetSection, fleetSections } from '../../src/report/fleet-sections.ts';
import { fleetSentences } from '../../src/report/fleet-sentences.ts';
import type { Fleet } from '../../src/vocabulary.ts';
import { citeNothing } from '../cite.ts';
import type { PageState } from '../page-state.ts';
import { saveText } from '../save-text.ts';
import type { View } from '../view.ts';
import { PageElement } from './page-element.ts';
import { shownTable } from './shown-table.ts';
import './chart-figure.ts';

declare const STEADYPAIR_VERSION: string;

const groups = ['firmware', 'model', 'site'] as const;
const usual = { by: 'firmware', swaps: 10, readyDays: 1 } as const;
const mostSwaps = 10_000;

interface Asked {
  readonly by: Fleet['by'];
  readonly swaps: number;
  readonly readyDays: number;
}

/** All pairs against each other: which get worse, how sync times differ, what comes next, which are fit for a swap. */
export class FleetView extends PageElement {
  static override properties = {
    state: { attribute: false },
    asked: { state: true },
    found: { state: true },
  };
  declare state: PageState;
  declare asked: Asked;
  declare found: { readonly fleet: Fleet; readonly sections: readonly FleetSection[] } | null;
  private foundOf: PageState['site'] | null = null;

  constructor() {
    super();
    this.asked = usual;
    this.found = null;
  }

  override willUpdate(_: PropertyValues<this>): void {
    if (this.foundOf === this.state.site) return;
    this.foundOf = this.state.site;
    this.found = null;
    void this.look();
  }

  override render(): TemplateResult {
    if (this.state.site.pairs.length === 0) return html`<h1 class="verdict">No file speaks of a pair.</h1>`;
    const { found } = this;
    return html`${this.chooser()}${
      found === null
        ? html`<p role="status">Comparing the pairs.</p>`
        : html`${answer(found.fleet)}${found.sections.map(sectionOf)}${this.ending(found.fleet)}`
    }`;
  }

  private async look(): Promise<void> {
    const { session, site } = this.state;
    if (site.pairs.length === 0) return;
    const { asked } = this;
    try {
      const fleet = await session.ask<'fleet'>({ kind: 'fleet', question: asked });
      if (asked === this.asked && site === this.foundOf)
        this.found = { fleet, sections: fleetSections(fleet, site.zone) };
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    }
  }

  private ask(change: Partial<Asked>): void {
    this.asked = { ...this.asked, ...change };
    citeNothing(this);
    void this.look();
  }

  private chooser(): TemplateResult {
    const { by, swaps, readyDays } = this.asked;
    const onBy = ({ target }: Event): void => {
      if (target instanceof HTMLSelectElement) this.ask({ by: groups[target.selectedIndex] ?? usual.by });
    };
    return html`<form class="line no-print" @submit=${(event: Event) => event.preventDefault()}>
      <label>Sync times by <select id="grouped" @change=${onBy}>
        ${groups.map((group) => html`<option ?selected=${group === by}>${group}</option>`)}
      </select></label>
      ${this.count('swaps', 'The next', swaps, 'swaps', (count) => this.ask({ swaps: count }))}
      ${this.count('ready-days', 'Fit: ready for', readyDays, 'days without a break', (count) => this.ask({ readyDays: count }))}
    </form>`;
  }

  private count(
    id: string,
    before: string,
    value: number,
    after: string,
    take: (count: number) => void,
  ): TemplateResult {
    const onChange = ({ target }: Event): void => {
      if (!(target instanceof HTMLInputElement)) return;
      if (target.checkValidity()) take(target.valueAsNumber);
      else target.reportValidity();
    };
    return html`<label>${before} <input id=${id} type="number" required min="1" max=${mostSwaps} step="1" .value=${String(value)} @change=${onChange} /> ${after}</label>`;
  }

  private ending(fleet: Fleet): TemplateResult {
    const names = ['fleet.html', 'fleet.md', 'fleet.json', 'fleet-pairs.csv', 'fleet-groups.csv'] as const;
    const words = ['report (HTML)', 'summary (Markdown)', 'figures (JSON)', 'pairs (CSV)', 'groups (CSV)'];
    return html`<section>
        <h2>Cautions</h2>
        <div class="cautions">${cautions.map((caution) => html`<p>${caution}</p>`)}</div>
      </section>
      <section class="no-print">
        <h2>Report</h2>
        <p class="choices">
          ${names.map(
            (name, index) =>
              html`<button type="button" data-name=${name} @click=${() => this.save(fleet, name)}>Save ${words[index]}</button>`,
          )}
          <button type="button" @click=${() => window.print()}>Print</button>
        </p>
      </section>`;
  }

  private async save(fleet: Fleet, name: string): Promise<void> {
    const { zone } = this.state.site;
    const reports = await fleetReports(fleet, { zone, version: STEADYPAIR_VERSION });
    const own = reports.find((report) => report.name === name);
    if (own !== undefined) saveText(own.name, own.text);
  }
}

function answer(fleet: Fleet): TemplateResult {
  const [first, ...rest] = fleetSentences(fleet);
  return html`<h1 class="verdict">${terminal(first)}</h1>
    ${rest.map((sentence) => html`<p>${terminal(sentence)}</p>`)}`;
}

function sectionOf({ id, title, figures, table, reading }: FleetSection): TemplateResult {
  return html`<section id=${`fleet-${id}`}>
    <h2>${title}</h2>
    ${figures.map(({ spec, caption }) => html`<chart-figure .spec=${spec} .caption=${caption}></chart-figure>`)}
    ${shownTable(table)}
    <p class="second">${reading}</p>
  </section>`;
}

customElements.define('fleet-view', FleetView);

export const fleetView: View = {
  id: 'fleet',
  title: 'Fleet',
  render: (state) => html`<fleet-view .state=${state}></fleet-view>`,
};
