import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { PageState } from '../page-state.ts';
import type { NotUsed, Refusal, SurveyModel } from '../protocol.ts';
import './file-rule.ts';
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
    const reasons = failures.filter(({ kind }) => kind !== 'own-report');
    const names = new Set(reasons.filter(({ kind }) => kind === 'left-out').map(fileOf));
    const drafts = this.survey?.files ?? [];
    const guessed = drafts.filter((f) => f.isGuess && !names.has(f.file)).map((f) => f.file);
    const files = [...names, ...guessed];
    if (failures.length === 0 && files.length === 0) return nothing;
    const most = this.isAll ? Number.POSITIVE_INFINITY : mostShown;
    const hidden = Math.max(failures.length, files.length) - most;
    return html`<section id="left-out" tabindex="-1">
      <h2>${failures.length === 0 ? 'Read by a guess' : 'Left out'}</h2>
      ${failures.length === 0 ? nothing : html`<ul>${failures.slice(0, most).map(item)}</ul>`}
      ${files.slice(0, most).map((file) => this.form(file))}
      ${hidden <= 0 ? nothing : html`<p><button type="button" id="all-left-out" @click=${() => this.lengthen()}>Show ${hidden.toLocaleString('en')} more</button></p>`}
    </section>`;
  }

  private form(file: string): TemplateResult {
    const draft = this.survey?.files.find((f) => f.file === file) ?? null;
    return html`<file-rule .file=${file} .draft=${draft} .survey=${this.survey} .session=${this.state.session}></file-rule>`;
  }

  private lengthen(): void {
    this.isAll = true;
  }
}

function item({ where, what, fix, kind }: NotUsed): TemplateResult {
  return html`<li><span class="inconclusive">${words[kind]}:</span> <b class="long">${terminal(where)}</b>: ${terminal(what)} ${terminal(fix)}</li>`;
}

const words: Readonly<Record<NotUsed['kind'], string>> = {
  'left-out': 'Left out',
  refused: 'Refused',
  'own-report': 'Skipped',
};

function fileOf({ where }: Refusal): string {
  return where.replace(/:\d+$/, '');
}

customElements.define('left-out', LeftOut);
