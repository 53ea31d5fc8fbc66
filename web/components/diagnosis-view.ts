import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { diagnoseReports } from '../../src/report/diagnose-reports.ts';
import { terminal } from '../../src/report/escape.ts';
import { saySentence } from '../../src/report/sentences.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { Diagnosis } from '../../src/vocabulary.ts';
import { citeNothing } from '../cite.ts';
import type { PageState } from '../page-state.ts';
import { saveText } from '../save-text.ts';
import type { View } from '../view.ts';
import { attemptsTable, causesList, doubtedTable, ladderTable } from './diagnosis-tables.ts';
import { notKnownOfPair } from './not-known.ts';
import { PageElement } from './page-element.ts';
import './staff-figure.ts';

declare const STEADYPAIR_VERSION: string;

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
    return html`${this.chooser()}${this.found === null ? html`<p role="status">Comparing the attempts.</p>` : this.answer(this.found)}`;
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
    return html`<p class="second">Pair ${terminal(pair)}${site === null ? '' : `, ${terminal(site)}`}, ${sayInstant(from, zone)} to ${sayInstant(to, zone)}</p>
      ${this.notKnownOf(pair)}
      <h1 class="verdict">${terminal(first)}</h1>
      ${rest.map((sentence) => html`<p>${terminal(sentence)}</p>`)}
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
      <staff-figure .health=${health} .home=${health.staff} .zone=${this.state.site.zone}></staff-figure>
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
