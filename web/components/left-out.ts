import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { PageState } from '../page-state.ts';
import type { Refusal, SurveyModel } from '../protocol.ts';
import './columns-form.ts';
import './draft-form.ts';
import { PageElement } from './page-element.ts';

const mostShown = 20;

/** What was left out and why, and how each of those files, or one that was read though its layout is a guess, may be read. */
export class LeftOut extends PageElement {
  static override properties = {
    state: { attribute: false },
    survey: { attribute: false },
    isAll: { state: true },
  };
  declare state: PageState;
  declare survey: SurveyModel | null;
  declare isAll: boolean;

  constructor() {
    super();
    this.isAll = false;
  }

  override render(): TemplateResult | typeof nothing {
    const { failures } = this.state.site;
    const names = new Set(failures.map(fileOf));
    const drafts = (this.survey?.files ?? []).filter((f) => f.isGuess || names.has(f.file));
    if (failures.length === 0 && drafts.length === 0) return nothing;
    const most = this.isAll ? Number.POSITIVE_INFINITY : mostShown;
    const hidden = Math.max(failures.length, drafts.length) - most;
    return html`<section id="left-out" tabindex="-1">
      <h2>${failures.length === 0 ? 'Perhaps to be read otherwise' : 'Left out'}</h2>
      ${failures.length === 0 ? nothing : html`<ul>${failures.slice(0, most).map(item)}</ul>`}
      ${drafts.slice(0, most).map((draft) => this.form(draft))}
      ${hidden <= 0 ? nothing : html`<p><button type="button" id="all-left-out" @click=${() => this.lengthen()}>Show ${hidden.toLocaleString('en')} more</button></p>`}
      ${failures.length === 0 ? nothing : html`<columns-form .names=${[...names]} .session=${this.state.session}></columns-form>`}
    </section>`;
  }

  private form(draft: SurveyModel['files'][number]): TemplateResult {
    return html`<draft-form .draft=${draft} .survey=${this.survey}></draft-form>`;
  }

  private lengthen(): void {
    this.isAll = true;
  }
}

function item({ where, what, fix }: Refusal): TemplateResult {
  return html`<li><span class="inconclusive">Left out:</span> <b class="long">${terminal(where)}</b>: ${terminal(what)} ${terminal(fix)}</li>`;
}

function fileOf({ where }: Refusal): string {
  return where.replace(/:\d+$/, '');
}

customElements.define('left-out', LeftOut);
