import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { terminal } from '../../src/report/escape.ts';
import { fleetReports } from '../../src/report/fleet-reports.ts';
import { type FleetSection, howComputedTitle } from '../../src/report/fleet-section.ts';
import { fleetSections } from '../../src/report/fleet-sections.ts';
import { atTheCabinet, fleetSentences } from '../../src/report/fleet-sentences.ts';
import type { Fleet } from '../../src/vocabulary.ts';
import { citeNothing } from '../cite.ts';
import type { PageState } from '../page-state.ts';
import { followPairs, type PairMarks } from '../pair-marks.ts';
import { saveText } from '../save-text.ts';
import type { View } from '../view.ts';
import { worstPairs } from './attention-summary.ts';
import { PageElement } from './page-element.ts';
import './chart-figure.ts';
import './shown-table.ts';

declare const STEADYPAIR_VERSION: string;

const groups = ['firmware', 'model', 'site'] as const;
const usual = { by: 'firmware', swaps: 10, readyDays: 1 } as const;
const mostSwaps = 10_000;

/** What the command writes with `--out`, as a person would call it. */
const savedAs = [
  ['fleet.html', 'report (HTML)'],
  ['fleet.md', 'summary (Markdown)'],
  ['fleet.json', 'figures (JSON)'],
  ['fleet-pairs.csv', 'pairs (CSV)'],
  ['fleet-losses.csv', 'losses by group (CSV)'],
  ['fleet-groups.csv', 'sync times by group (CSV)'],
  ['fleet-attempts.csv', 'bring-ups (CSV)'],
  ['fleet-months.csv', 'months (CSV)'],
  ['fleet-census.csv', 'census (CSV)'],
  ['fleet-forecast.csv', 'forecast (CSV)'],
] as const;

type FleetInputs = Partial<Readonly<Record<'by' | 'swaps' | 'days', string>>>;

interface Asked {
  readonly by: Fleet['by'];
  readonly swaps: number;
  readonly readyDays: number;
}

/** All pairs against each other: which get worse, how sync times differ, what comes next, which are fit for a swap. */
export class FleetView extends PageElement {
  static override properties = {
    state: { attribute: false },
    found: { state: true },
    isLooking: { state: true },
    said: { state: true },
  };
  declare state: PageState;
  declare found: { readonly fleet: Fleet; readonly sections: readonly FleetSection[] } | null;
  declare isLooking: boolean;
  declare said: string;
  private foundOf: PageState['site'] | null = null;
  private asked: Asked = usual;
  private pairs: PairMarks | null = null;

  constructor() {
    super();
    this.found = null;
    this.isLooking = false;
    this.said = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.pairs = followPairs(this, () => this.state);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.pairs?.end();
  }

  override willUpdate(_: PropertyValues<this>): void {
    const { site, inputs } = this.state;
    const asked = askedIn(inputs);
    const isSame = (['by', 'swaps', 'readyDays'] as const).every((part) => asked[part] === this.asked[part]);
    if (this.foundOf === site && isSame) return;
    if (this.foundOf !== site) this.found = null;
    this.foundOf = site;
    this.asked = asked;
    void this.look();
  }

  override render(): TemplateResult {
    if (this.state.site.pairs.length === 0) return html`<h1 class="verdict">No file speaks of a pair.</h1>`;
    const { found } = this;
    return html`${this.chooser()}
      <p role="status" class="second no-print">${this.isLooking ? 'Comparing the pairs.' : ''}</p>
      ${found === null ? nothing : html`${answer(found.fleet)}${this.worst()}${found.sections.map(sectionOf)}${this.ending(found.fleet)}`}`;
  }

  override updated(): void {
    this.pairs?.mark();
  }

  private async look(): Promise<void> {
    const { session, site } = this.state;
    if (site.pairs.length === 0) return;
    const { asked } = this;
    const isWanted = (): boolean => asked === this.asked && site === this.foundOf;
    this.isLooking = true;
    try {
      const fleet = await session.ask<'fleet'>({ kind: 'fleet', question: asked });
      if (isWanted()) this.found = { fleet, sections: fleetSections(fleet, site.zone) };
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    } finally {
      if (isWanted()) this.isLooking = false;
    }
  }

  private ask(detail: FleetInputs): void {
    citeNothing(this);
    this.dispatchEvent(new CustomEvent('inputs', { bubbles: true, detail }));
  }

  private chooser(): TemplateResult {
    const { by, swaps, readyDays } = this.asked;
    const onBy = ({ target }: Event): void => {
      if (target instanceof HTMLSelectElement) this.ask({ by: groups[target.selectedIndex] ?? usual.by });
    };
    return html`<form class="line no-print" @submit=${(event: Event) => event.preventDefault()}>
      <label>Losses and sync times by <select id="grouped" @change=${onBy}>
        ${groups.map((group) => html`<option .selected=${group === by}>${group}</option>`)}
      </select></label>
      ${this.count('swaps', 'The next', swaps, 'swaps', (count) => this.ask({ swaps: String(count) }))}
      ${this.count('ready-days', 'Fit: ready for', readyDays, 'days without a break', (count) => this.ask({ days: String(count) }))}
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

  /** The order of attention is one for all views; the tables below rank by bouts. */
  private worst(): TemplateResult | typeof nothing {
    const worst = worstPairs(this.state.site);
    return worst === null
      ? nothing
      : html`<p>Needs attention now: ${worst}. <a href="#pairs">Pairs</a> lists all in this order.</p>`;
  }

  private ending(fleet: Fleet): TemplateResult {
    return html`<section>
        <h2>Cautions</h2>
        <div class="cautions">${cautions.map((caution) => html`<p>${caution}</p>`)}</div>
      </section>
      <section class="no-print">
        <h2>Report</h2>
        <p class="choices">
          ${savedAs.map(
            ([name, words]) =>
              html`<button type="button" data-name=${name} @click=${() => this.save(fleet, name)}>Save ${words}</button>`,
          )}
          <button type="button" @click=${() => window.print()}>Print</button>
        </p>
        <p class="second" role="status">${this.said}</p>
      </section>`;
  }

  private async save(fleet: Fleet, name: string): Promise<void> {
    const { zone } = this.state.site;
    const reports = await fleetReports(fleet, { zone, version: STEADYPAIR_VERSION });
    const own = reports.find((report) => report.name === name);
    if (own === undefined) throw new RangeError(`No report is named ${name}.`);
    saveText(own.name, own.text);
    this.said = `${own.name} was given to the browser to save.`;
  }
}

/** What is asked, as the inputs of the page say it; what they do not say, or not so, is the usual. */
function askedIn({ by, swaps, days }: FleetInputs): Asked {
  const count = (text: string | undefined, otherwise: number): number =>
    /^[1-9]\d{0,4}$/.test(text ?? '') && Number(text) <= mostSwaps ? Number(text) : otherwise;
  return {
    by: groups.find((group) => group === by) ?? usual.by,
    swaps: count(swaps, usual.swaps),
    readyDays: count(days, usual.readyDays),
  };
}

function answer(fleet: Fleet): TemplateResult {
  const [first, ...rest] = fleetSentences(
    fleet,
    (pair) => `open ${pair} under Won’t sync, and ${atTheCabinet}`,
  );
  return html`<h1 class="verdict">${terminal(first)}</h1>
    ${rest.map((sentence) => html`<p>${terminal(sentence)}</p>`)}`;
}

function sectionOf({ id, title, figures, table, howComputed }: FleetSection): TemplateResult {
  return html`<section id=${`fleet-${id}`}>
    <h2>${title}</h2>
    ${figures.map(({ spec, caption }) => html`<chart-figure .spec=${spec} .caption=${caption}></chart-figure>`)}
    <shown-table .table=${table}></shown-table>
    <p class="second"><b>${howComputedTitle}.</b> ${howComputed}</p>
  </section>`;
}

customElements.define('fleet-view', FleetView);

export const fleetView: View = {
  id: 'fleet',
  title: 'Fleet',
  render: (state) => html`<fleet-view .state=${state}></fleet-view>`,
};
