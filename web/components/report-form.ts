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

/** The fields of the work order: what is written in them stands in the report. Fires `judging` with the promise that it does. */
export class ReportForm extends PageElement {
  static override properties = {
    model: { attribute: false },
    swap: { attribute: false },
    session: { attribute: false },
  };
  declare model: PairModel;
  declare swap: Swap;
  declare session: Session;
  /** What was written, by field: the next field may be left before the swap is judged with the last one. */
  private written: Readonly<Record<string, string>> = {};
  private writtenOf = '';

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

  private onField({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    const before = this.writtenOf === this.swap.pair ? this.written : {};
    this.written = { ...before, [target.name]: target.value.trim() };
    this.writtenOf = this.swap.pair;
    const detail = this.judge();
    this.dispatchEvent(new CustomEvent('judging', { bubbles: true, detail }));
  }

  /** What a person writes becomes the job of the pair, and the swap is judged again. */
  private async judge(): Promise<void> {
    const kept = Object.entries({ ...this.model.job, ...this.written });
    const job: Job = Object.fromEntries(kept.filter(([, value]) => value !== ''));
    const next = Object.keys(job).length === 0 ? null : job;
    const model = await this.session.ask<'judge'>({ kind: 'judge', pair: this.swap.pair, job: next });
    this.dispatchEvent(new CustomEvent('pair', { bubbles: true, detail: model }));
  }
}

customElements.define('report-form', ReportForm);
