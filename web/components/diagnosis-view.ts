import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { terminal } from '../../src/report/escape.ts';
import { saySentence } from '../../src/report/sentences.ts';
import { sayCount, sayDatedBounds } from '../../src/report/words.ts';
import type { Diagnosis } from '../../src/vocabulary.ts';
import { citeNothing } from '../cite.ts';
import type { PageState } from '../page-state.ts';
import { putOnPaper } from '../paper.ts';
import type { View } from '../view.ts';
import { diagnosisReports, htmlOf } from '../view-reports.ts';
import { attemptsTable, causesList, doubtedTable, ladderTable, mostLikely } from './diagnosis-tables.ts';
import { notKnownOfPair } from './not-known.ts';
import { PageElement } from './page-element.ts';
import type { Reports } from './save-bar.ts';
import './save-bar.ts';
import './staff-figure.ts';

/** Why a pair will not synchronise: the answer, how far it gets, the causes with their evidence, what to check. */
export class DiagnosisView extends PageElement {
  static override properties = {
    state: { attribute: false },
    asked: { state: true },
    found: { state: true },
  };
  declare state: PageState;
  /** The pair that was asked for; `null`: the one that is worst now. */
  declare asked: string | null;
  declare found: Diagnosis | null;
  private foundOf: PageState['site'] | null = null;
  private reports: { readonly of: Diagnosis; readonly given: Reports } | null = null;

  constructor() {
    super();
    this.asked = null;
    this.found = null;
  }

  override willUpdate(_: PropertyValues<this>): void {
    if (this.foundOf === this.state.site) return;
    this.foundOf = this.state.site;
    this.found = null;
    if (!this.state.site.pairs.some((p) => p.health.pair === this.asked)) this.asked = null;
    void this.look();
  }

  override render(): TemplateResult {
    if (this.state.site.pairs.length === 0) return html`<h1 class="verdict">No file speaks of a pair.</h1>`;
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
    if (this.reports?.of !== found)
      this.reports = { of: found, given: diagnosisReports(found, this.state.site.zone) };
    return this.reports.given;
  }

  private async look(): Promise<void> {
    const { session, site } = this.state;
    if (site.pairs.length === 0) return;
    const asked = this.asked;
    try {
      const found = await session.ask<'diagnose'>({ kind: 'diagnose', pair: asked });
      if (asked === this.asked && site === this.foundOf) this.found = found;
    } catch (error) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail: error }));
    }
  }

  private chooser(): TemplateResult {
    const names = this.state.site.pairs.map((p) => p.health.pair);
    const choose = ({ target }: Event): void => {
      if (!(target instanceof HTMLSelectElement)) return;
      this.asked = names[target.selectedIndex - 1] ?? null;
      this.found = null;
      citeNothing(this);
      void this.look();
    };
    return html`<p class="line no-print"><label>Pair <select id="diagnosed" @change=${choose}>
      <option ?selected=${this.asked === null}>the one that is worst now</option>
      ${names.map((name) => html`<option ?selected=${this.asked === name}>${terminal(name)}</option>`)}
    </select></label></p>`;
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
      ${healthy ? nothing : html`<section id="diagnosis-stages"><h2>How far it gets</h2>${ladderTable(diagnosis)}</section>`}
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
      <staff-figure .health=${health} .home=${health.staff} .zone=${this.state.site.zone}></staff-figure>
    </section>`;
  }

  private causes(diagnosis: Diagnosis): TemplateResult {
    const { causes, doubted, unjudged } = diagnosis;
    return html`<section id="diagnosis-causes"><h2>Causes, by rank</h2>${causesList(diagnosis)}</section>
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
