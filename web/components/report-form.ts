import { html, type TemplateResult } from 'lit';
import type { Job, Swap } from '../../src/vocabulary.ts';
import type { PairModel } from '../protocol.ts';
import type { Session } from '../session.ts';
import { PageElement } from './page-element.ts';

type Field = 'workOrder' | 'site' | 'technician' | 'reviewer';
const fields: readonly (readonly [Field, string])[] = [
  ['workOrder', 'Work order'],
  ['site', 'Site'],
  ['technician', 'Done by'],
  ['reviewer', 'Reviewed by'],
];

/** The fields of the work order: what is written in them stands in the report. */
export class ReportForm extends PageElement {
  static override properties = {
    model: { attribute: false },
    swap: { attribute: false },
    session: { attribute: false },
  };
  declare model: PairModel;
  declare swap: Swap;
  declare session: Session;

  override render(): TemplateResult {
    const job = this.model.job;
    return html`<form class="fields" @submit=${(event: Event) => event.preventDefault()}>
        ${fields.map(
          ([key, words]) =>
            html`<label>${words}<input name=${key} autocomplete="off" .value=${job?.[key] ?? ''} @change=${this.onField} /></label>`,
        )}
      </form>
      ${job?.plan === undefined ? '' : html`<p class="second">The job file plans ${Object.keys(job.plan).length === 1 ? 'one pair' : `${Object.keys(job.plan).length} pairs`}; models are checked against it.</p>`}`;
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
}

customElements.define('report-form', ReportForm);
