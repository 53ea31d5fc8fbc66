import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { terminal } from '../../src/report/escape.ts';
import type { FleetSection } from '../../src/report/fleet-section.ts';
import { fleetSections } from '../../src/report/fleet-sections.ts';
import { atTheCabinet, fleetSentences } from '../../src/report/fleet-sentences.ts';
import type { Fleet } from '../../src/vocabulary.ts';
import { citeNothing } from '../cite.ts';
import type { PageState } from '../page-state.ts';
import { followPairs, type PairMarks } from '../pair-marks.ts';
import { putOnPaper } from '../paper.ts';
import type { View } from '../view.ts';
import { fleetReportsOf, htmlOf } from '../view-reports.ts';
import { worstPairs } from './attention-summary.ts';
import { fleetPart } from './fleet-part.ts';
import { linesButton } from './lines-button.ts';
import { PageElement } from './page-element.ts';
import type { Reports } from './save-bar.ts';
import './save-bar.ts';

const groups = ['firmware', 'model', 'site'] as const;
const usual = { by: 'firmware', swaps: 10, readyDays: 1 } as const;
const mostSwaps = 10_000;

/** So many sentences stand under the verdict; further ones are folded. */
const mostSentences = 6;

type FleetInputs = Partial<Readonly<Record<'by' | 'swaps' | 'days', string>>>;

interface Asked {
  readonly by: Fleet['by'];
  readonly swaps: number;
  readonly readyDays: number;
}

/** All pairs against each other: which get worse, how sync times differ, what comes next, which are ready for a swap. */
export class FleetView extends PageElement {
  static override properties = {
    state: { attribute: false },
    found: { state: true },
    isLooking: { state: true },
  };
  declare state: PageState;
  declare found: {
    readonly fleet: Fleet;
    readonly sections: readonly FleetSection[];
    readonly reports: Reports;
  } | null;
  declare isLooking: boolean;
  private foundOf: PageState['site'] | null = null;
  private asked: Asked = usual;
  private pairs: PairMarks | null = null;

  constructor() {
    super();
    this.found = null;
    this.isLooking = false;
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
    if (this.state.site.pairs.length === 0) return html`<h1 class="verdict">No file names a pair.</h1>`;
    const { found } = this;
    return html`${found === null ? nothing : html`<div class="top"><save-bar .reports=${found.reports}></save-bar>${this.unfolding(found.sections.length)}</div>${answer(found.fleet)}${this.worst()}`}
      ${this.chooser()}
      <p role="status" class="second no-print">${this.isLooking ? 'Comparing the pairs.' : ''}</p>
      ${found === null ? nothing : this.parts(found.sections)}`;
  }

  override updated(): void {
    const { found } = this;
    this.pairs?.mark();
    putOnPaper(this, found === null ? null : { of: found.fleet, write: () => htmlOf(found.reports) });
  }

  /** Every section is unfolded. */
  private isWhole(): boolean {
    return this.state.inputs.sections === 'all';
  }

  private unfolding(count: number): TemplateResult {
    const isWhole = this.isWhole();
    const turn = (): void => {
      const detail = { sections: isWhole ? null : 'all' };
      this.dispatchEvent(new CustomEvent('inputs', { bubbles: true, detail }));
    };
    return html`<button type="button" id="all-sections" class="link" aria-pressed=${isWhole} @click=${turn}>${isWhole ? 'Fold all sections' : `Show all ${count} sections`}</button>`;
  }

  /** The first answers the question of the view; of the others a line each, until they are asked for. */
  private parts(sections: readonly FleetSection[]): TemplateResult {
    return html`${sections.map((part, index) => fleetPart(part, this.isWhole() || index === 0, this.state.inputs))}
      <section id="fleet-cautions">
        <h2>Cautions</h2>
        <div class="cautions">${cautions.map((caution) => html`<p>${caution}</p>`)}</div>
      </section>`;
  }

  private async look(): Promise<void> {
    const { session, site } = this.state;
    if (site.pairs.length === 0) return;
    const { asked } = this;
    const isWanted = (): boolean => asked === this.asked && site === this.foundOf;
    this.isLooking = true;
    try {
      const fleet = await session.ask<'fleet'>({ kind: 'fleet', question: asked });
      if (isWanted())
        this.found = {
          fleet,
          sections: fleetSections(fleet, site.zone),
          reports: fleetReportsOf(fleet, site.zone),
        };
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
      ${this.count('ready-days', 'Ready for a swap: ready for', readyDays, 'days without a break', (count) => this.ask({ days: String(count) }))}
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

/** The verdict, and a sentence each for what it rests on; those of the worst pairs with their lines. */
function answer(fleet: Fleet): TemplateResult {
  const [first, ...rest] = fleetSentences(
    fleet,
    (pair) => `open ${pair} under Won’t sync, and ${atTheCabinet}`,
  );
  const said = (sentence: string): TemplateResult => {
    const about = fleet.pairs.find(({ pair }) => sentence.startsWith(`${pair}: `));
    return html`<p>${terminal(sentence)} ${about === undefined || about.evidence.length === 0 ? nothing : linesButton(`Losses of ${about.pair}`, about.evidence)}</p>`;
  };
  const more = rest.slice(mostSentences);
  return html`<h1 class="verdict">${terminal(first)}</h1>
    ${rest.slice(0, mostSentences).map(said)}
    ${more.length === 0 ? nothing : html`<details><summary>${more.length} more. Show</summary>${more.map(said)}</details>`}`;
}

customElements.define('fleet-view', FleetView);

export const fleetView: View = {
  id: 'fleet',
  title: 'Fleet',
  render: (state) => html`<fleet-view .state=${state}></fleet-view>`,
};
