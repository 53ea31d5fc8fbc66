import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { terminal } from '../../src/report/escape.ts';
import { saySentence } from '../../src/report/sentences.ts';
import { sayCount, sayDatedBounds } from '../../src/report/words.ts';
import type { Diagnosis } from '../../src/vocabulary.ts';
import { shortReasons } from '../health-words.ts';
import { lastSwapOf, type PageState, worstFor } from '../page-state.ts';
import { putOnPaper } from '../paper.ts';
import type { View } from '../view.ts';
import { diagnosisReports, htmlOf } from '../view-reports.ts';
import { attemptsTable, causesList, doubtedTable, ladderTable, mostLikely } from './diagnosis-tables.ts';
import { notKnownOfPair } from './not-known.ts';
import { PageElement } from './page-element.ts';
import type { Reports } from './save-bar.ts';
import './save-bar.ts';
import { pairLinks } from './pair-links.ts';
import './staff-figure.ts';

/** Why a pair will not synchronise: the answer, how far it gets, the causes with their evidence, what to check. */
export class DiagnosisView extends PageElement {
  static override properties = {
    state: { attribute: false },
    found: { state: true },
  };
  declare state: PageState;
  declare found: Diagnosis | null;
  private foundOf: PageState['site'] | null = null;
  private reports: { readonly of: Diagnosis; readonly given: Reports } | null = null;
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
    if (this.state.site.pairs.length === 0) return html`<h1 class="verdict">No file names a pair.</h1>`;
    const { found } = this;
    return html`<div class="top">${this.chooser()}${found === null ? nothing : html`<save-bar data-errand="report" .reports=${this.reportsOf(found)}></save-bar>`}</div>
      ${found === null ? html`<p role="status">Comparing the attempts.</p>` : this.answer(found)}`;
  }

  override updated(): void {
    const { reports } = this;
    const isFound = reports !== null && reports.of === this.found;
    putOnPaper(this, isFound ? { of: reports.of, write: () => htmlOf(reports.given) } : null);
  }

  /** The same object for the same diagnosis: it is written once. */
  private reportsOf(found: Diagnosis): Reports {
    if (this.reports?.of !== found) this.reports = { of: found, given: diagnosisReports(found, this.state) };
    return this.reports.given;
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
    const period = sayDatedBounds({ earliest: from, time: to }, zone);
    return html`<p class="second">Pair ${terminal(pair)}${site === null ? '' : `, ${terminal(site)}`}, ${period}. ${chosen === null ? nothing : terminal(chosen)} ${this.notKnownOf(pair)}</p>
      <h1 class="verdict long">${terminal(first)}</h1>
      ${rest.slice(0, -1).map((sentence) => html`<p>${terminal(sentence)}</p>`)}
      ${healthy ? nothing : mostLikely(diagnosis)}
      ${rest.slice(-1).map((sentence) => html`<p>${terminal(sentence)}</p>`)}
      ${this.staff(diagnosis)}
      ${healthy ? nothing : html`<section id="diagnosis-stages"><h2>Sync stages</h2>${ladderTable(diagnosis)}</section>`}
      ${healthy ? nothing : this.causes(diagnosis)}
      <section id="diagnosis-cautions">
        <h2>Cautions</h2>
        <div class="cautions">${cautions.map((caution) => html`<p>${caution}</p>`)}</div>
      </section>`;
  }

  private notKnownOf(pair: string): TemplateResult | typeof nothing {
    const model = this.state.site.pairs.find((p) => p.health.pair === pair);
    return model === undefined ? nothing : notKnownOfPair(model);
  }

  private staff({ pair, from, to }: Diagnosis): TemplateResult | typeof nothing {
    const health = this.state.site.pairs.find((p) => p.health.pair === pair)?.health;
    if (health === undefined || to <= from) return nothing;
    return html`<section id="diagnosis-staff">
      <h2>The pair over time</h2>
      <staff-figure .health=${health} .home=${health.staff} .zone=${this.state.site.zone} .span=${this.state.span}></staff-figure>
    </section>`;
  }

  private causes(diagnosis: Diagnosis): TemplateResult {
    const { causes, doubted, unjudged } = diagnosis;
    return html`<section id="diagnosis-causes"><h2>Causes, most likely first</h2>${causesList(diagnosis)}</section>
      <section id="diagnosis-next">
        <h2>What to check, in this order</h2>
        <ol>${causes.map((c) => html`<li>${terminal(c.title)}: ${terminal(c.next)}</li>`)}</ol>
      </section>
      <section id="diagnosis-attempts"><h2>Attempts</h2>${attemptsTable(diagnosis, this.state.site.zone)}</section>
      <section id="diagnosis-doubted">
        <h2>Checked and not supported</h2>
        <details class="fold"><summary>${sayCount(doubted.length, 'cause')} not supported, ${unjudged.length === 0 ? 'none' : unjudged.length} without enough data to judge. Show</summary>${doubtedTable(diagnosis)}</details>
      </section>`;
  }
}

customElements.define('diagnosis-view', DiagnosisView);

export const diagnosisView: View = {
  id: 'diagnosis',
  title: "Won't sync",
  render: (state) => html`<diagnosis-view .state=${state}></diagnosis-view>`,
};
