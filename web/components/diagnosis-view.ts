import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { diagnoseReports } from '../../src/report/diagnose-reports.ts';
import { terminal } from '../../src/report/escape.ts';
import { saySentence } from '../../src/report/sentences.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { Diagnosis } from '../../src/vocabulary.ts';
import { shortReasons } from '../health-words.ts';
import { lastSwapOf, type PageState, worstFor } from '../page-state.ts';
import { saveText } from '../save-text.ts';
import type { View } from '../view.ts';
import { causeLines } from './cause-lines.ts';
import { attemptsTable, causesList, doubtedTable, ladderTable } from './diagnosis-tables.ts';
import { notKnownOfPair } from './not-known.ts';
import { PageElement } from './page-element.ts';
import { pairLinks } from './pair-links.ts';
import './staff-figure.ts';

declare const STEADYPAIR_VERSION: string;

/** Why a pair will not synchronise: the answer, how far it gets, the causes with their evidence, what to check. */
export class DiagnosisView extends PageElement {
  static override properties = {
    state: { attribute: false },
    found: { state: true },
  };
  declare state: PageState;
  declare found: Diagnosis | null;
  private foundOf: PageState['site'] | null = null;
  private asked = '';

  constructor() {
    super();
    this.found = null;
  }

  override willUpdate(_: PropertyValues<this>): void {
    const { site, chosen } = this.state;
    if (this.foundOf === site && this.asked === chosen.pair) return;
    this.foundOf = site;
    this.asked = chosen.pair;
    this.found = null;
    void this.look();
  }

  override render(): TemplateResult {
    if (this.state.site.pairs.length === 0) return html`<h1 class="verdict">No file speaks of a pair.</h1>`;
    return html`${this.chooser()}${this.found === null ? html`<p role="status">Comparing the attempts.</p>` : this.answer(this.found)}`;
  }

  private async look(): Promise<void> {
    const { session, site } = this.state;
    if (site.pairs.length === 0) return;
    const asked = this.asked;
    try {
      // The worst one is asked for without its name: then the answer says why it was taken.
      const isWorst = asked === worstFor(site, 'diagnosis').pair;
      const first = await session.ask<'diagnose'>({ kind: 'diagnose', pair: isWorst ? null : asked });
      const isAnswered = first.pair === asked;
      const found = isAnswered ? first : await session.ask<'diagnose'>({ kind: 'diagnose', pair: asked });
      if (asked === this.asked && site === this.foundOf) this.found = found;
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    }
  }

  /** All pairs, the worst first, as in every view. */
  private chooser(): TemplateResult {
    const { attention, pairs } = this.state.site;
    const choose = ({ target }: Event): void => {
      const pair = target instanceof HTMLSelectElement ? attention[target.selectedIndex]?.pair : undefined;
      if (pair === undefined) return;
      const detail = { ...lastSwapOf(pairs, pair), view: 'diagnosis' };
      this.dispatchEvent(new CustomEvent('choose', { bubbles: true, detail }));
    };
    return html`<p class="line no-print"><label>Pair <select id="diagnosed" @change=${choose}>
      ${attention.map(
        ({ pair, reasons: [first] }) =>
          html`<option value=${pair} .selected=${this.asked === pair}>${terminal(pair)}${first === undefined ? '' : `, ${shortReasons[first.kind]}`}</option>`,
      )}
    </select></label>${pairLinks(this.asked, 'diagnosis')}</p>`;
  }

  private answer(diagnosis: Diagnosis): TemplateResult {
    const { zone } = this.state.site;
    const { pair, site, sentences, chosen, from, to, healthy } = diagnosis;
    const [first = '', ...rest] = sentences.map((s) => saySentence(s, zone, from));
    return html`<p class="second">Pair ${terminal(pair)}${site === null ? '' : `, ${terminal(site)}`}, ${sayInstant(from, zone)} to ${sayInstant(to, zone)}</p>
      ${this.notKnownOf(pair)}
      <h1 class="verdict">${terminal(first)}</h1>
      ${rest.map((sentence) => html`<p>${terminal(sentence)}</p>`)}${causeLines(diagnosis)}
      ${chosen === null ? nothing : html`<p class="second">${terminal(chosen)}</p>`}
      ${healthy ? nothing : html`<section><h2>How far it gets</h2>${ladderTable(diagnosis)}</section>`}
      ${this.staff(diagnosis)}
      ${healthy ? nothing : this.causes(diagnosis)}
      <section>
        <h2>Cautions</h2>
        <div class="cautions">${cautions.map((caution) => html`<p>${caution}</p>`)}</div>
      </section>
      <section class="no-print">
        <h2>Report</h2>
        <p class="choices">
          <button type="button" id="save-diagnosis" @click=${() => this.save(diagnosis, '.html')}>Save report (HTML)</button>
          <button type="button" @click=${() => this.save(diagnosis, '.md')}>Save summary (Markdown)</button>
          <button type="button" @click=${() => window.print()}>Print</button>
        </p>
      </section>`;
  }

  private notKnownOf(pair: string): TemplateResult | typeof nothing {
    const model = this.state.site.pairs.find((p) => p.health.pair === pair);
    return model === undefined ? nothing : notKnownOfPair(model);
  }

  private staff({ pair, from, to }: Diagnosis): TemplateResult | typeof nothing {
    const health = this.state.site.pairs.find((p) => p.health.pair === pair)?.health;
    if (health === undefined || to <= from) return nothing;
    return html`<section>
      <h2>The pair over time</h2>
      <staff-figure .health=${health} .home=${health.staff} .zone=${this.state.site.zone} .span=${this.state.span}></staff-figure>
    </section>`;
  }

  private causes(diagnosis: Diagnosis): TemplateResult {
    const { causes } = diagnosis;
    return html`<section><h2>Attempts</h2>${attemptsTable(diagnosis, this.state.site.zone)}</section>
      <section><h2>Causes, by rank</h2>${causesList(diagnosis)}</section>
      <section>
        <h2>What to check, in this order</h2>
        <ol>${causes.map((c) => html`<li>${terminal(c.title)}: ${terminal(c.next)}</li>`)}</ol>
      </section>
      <section><h2>Checked and not supported</h2>${doubtedTable(diagnosis)}</section>`;
  }

  private async save(diagnosis: Diagnosis, ending: string): Promise<void> {
    const reports = await diagnoseReports(diagnosis, {
      zone: this.state.site.zone,
      version: STEADYPAIR_VERSION,
    });
    const own = reports.find((r) => r.name.endsWith(ending));
    if (own !== undefined) saveText(own.name, own.text);
  }
}

customElements.define('diagnosis-view', DiagnosisView);

export const diagnosisView: View = {
  id: 'diagnosis',
  title: "Won't sync",
  render: (state) => html`<diagnosis-view .state=${state}></diagnosis-view>`,
};
