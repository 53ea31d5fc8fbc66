import { html, type TemplateResult } from 'lit';
import { reportsOf } from '../../src/report/verify-reports.ts';
import type { Job, Swap } from '../../src/vocabulary.ts';
import type { PairModel } from '../protocol.ts';
import { saveText } from '../save-text.ts';
import type { Session } from '../session.ts';
import { PageElement } from './page-element.ts';

declare const STEADYPAIR_VERSION: string;

type Field = 'workOrder' | 'site' | 'technician' | 'reviewer';
const fields: readonly (readonly [Field, string])[] = [
  ['workOrder', 'Work order'],
  ['site', 'Site'],
  ['technician', 'Done by'],
  ['reviewer', 'Reviewed by'],
];

/** The fields of the work order, and the ways to take the report along. */
export class ReportForm extends PageElement {
  static override properties = {
    model: { attribute: false },
    swap: { attribute: false },
    zone: { attribute: false },
    session: { attribute: false },
    said: { state: true },
  };
  declare model: PairModel;
  declare swap: Swap;
  declare zone: string;
  declare session: Session;
  declare said: string;

  constructor() {
    super();
    this.said = '';
  }

  override render(): TemplateResult {
    const job = this.model.job;
    return html`<form class="fields" @submit=${(event: Event) => event.preventDefault()}>
        ${fields.map(
          ([key, words]) =>
            html`<label>${words}<input name=${key} autocomplete="off" .value=${job?.[key] ?? ''} @change=${this.onField} /></label>`,
        )}
      </form>
      ${job?.plan === undefined ? '' : html`<p class="second">The job file plans ${Object.keys(job.plan).length === 1 ? 'one pair' : `${Object.keys(job.plan).length} pairs`}; models are checked against it.</p>`}
      <p class="choices">
        <button type="button" id="save-report" @click=${() => this.save('html')}>Save report (HTML)</button>
        <button type="button" id="save-markdown" @click=${() => this.save('md')}>Save summary (Markdown)</button>
        <button type="button" id="copy-markdown" @click=${this.copy}>Copy summary</button>
        <button type="button" id="print" @click=${() => window.print()}>Print</button>
      </p>
      <p class="second" role="status">${this.said}</p>`;
  }

  /** What a person writes becomes the job of the pair, and the swap is judged again. */
  private async onField({ target }: Event): Promise<void> {
    if (!(target instanceof HTMLInputElement)) return;
    const kept = Object.entries({ ...this.model.job, [target.name]: target.value.trim() });
    const job: Job = Object.fromEntries(kept.filter(([, value]) => value !== ''));
    const next = Object.keys(job).length === 0 ? null : job;
    const model = await this.session.ask<'judge'>({ kind: 'judge', pair: this.swap.pair, job: next });
    this.dispatchEvent(new CustomEvent('pair', { bubbles: true, detail: model }));
  }

  private async report(ending: 'html' | 'md'): Promise<{ readonly name: string; readonly text: string }> {
    const { verification } = this.model;
    const reports = await reportsOf(verification, { zone: this.zone, version: STEADYPAIR_VERSION });
    const own = reports.filter((r) => r.name.endsWith(`.${ending}`))[verification.swaps.indexOf(this.swap)];
    if (own === undefined) throw new RangeError('The swap has no report.');
    return own;
  }

  private async save(ending: 'html' | 'md'): Promise<void> {
    const { name, text } = await this.report(ending);
    saveText(name, text);
    this.said = `${name} was given to the browser to save.`;
  }

  private async copy(): Promise<void> {
    const { text } = await this.report('md');
    try {
      await navigator.clipboard.writeText(text);
      this.said = 'The summary is on the clipboard, as Markdown.';
    } catch (error) {
      // Some browsers keep a page opened from disk from the clipboard.
      if (!(error instanceof DOMException || error instanceof TypeError)) throw error;
      this.said = 'The browser does not let this page use the clipboard. Save the summary instead.';
    }
  }
}

customElements.define('report-form', ReportForm);
