import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { findWordings, listed, sayUnderstood } from '../../src/report/find-wordings.ts';
import type { SeenWording } from '../../src/vocabulary.ts';
import { citing } from '../cite.ts';
import type { NamedLesson } from '../lesson-draft.ts';
import type { SurveyModel } from '../protocol.ts';
import type { Session } from '../session.ts';
import { linesButton } from './lines-button.ts';
import { PageElement } from './page-element.ts';
import './lesson-form.ts';

const mostRows = 40;
/** How much of a wording a button is told by. */
const mostNamed = 40;

/** All wordings and values of the files, those of redundancy first; each can be taught. */
export class WordingForm extends PageElement {
  static override properties = {
    survey: { attribute: false },
    lessons: { attribute: false },
    session: { attribute: false },
    words: { state: true },
    isAll: { state: true },
    isLong: { state: true },
    open: { state: true },
  };
  declare survey: SurveyModel;
  declare lessons: readonly NamedLesson[];
  declare session: Session;
  declare words: string;
  /** Whether those that are recognised are shown too; `null` until a person says so. */
  declare isAll: boolean | null;
  declare isLong: boolean;
  declare open: SeenWording | null;
  /** The button of the wording that is open. */
  private toggled: HTMLElement | null = null;

  constructor() {
    super();
    this.words = '';
    this.isAll = null;
    this.isLong = false;
    this.open = null;
    // What was added stays in the table, closed, and the keyboard where it was.
    this.addEventListener('lesson', () => {
      this.open = null;
      this.toggled?.focus();
    });
  }

  override render(): TemplateResult {
    const { wordings } = this.survey;
    const unknown = wordings.filter((w) => w.understood === null).length;
    const isAll = this.isAll ?? unknown === 0;
    const found = findWordings(this.survey, this.words).filter((w) => isAll || w.understood === null);
    const shown = this.isLong ? found : found.slice(0, mostRows);
    return html`<div class="line">
        <label>Find <input type="search" name="find" .value=${this.words} @input=${this.onFind} autocomplete="off" spellcheck="false" placeholder="words, in any order" /></label>
        <label><input type="checkbox" name="all" .checked=${isAll} @change=${this.onAll} /> Show what is recognised too</label>
      </div>
      <p class="second" role="status" id="found">${found.length.toLocaleString('en')} of ${wordings.length.toLocaleString('en')} wordings; ${unknown.toLocaleString('en')} ${unknown === 1 ? 'is' : 'are'} not recognised.</p>
      <div class="scroll"><table class="wordings">
        <thead><tr><th scope="col">Wording</th><th scope="col" class="number">Rows</th><th scope="col">Means now</th><th scope="col"><span class="hidden">What to do</span></th></tr></thead>
        <tbody>${shown.map((w) => this.row(w))}</tbody>
      </table></div>
      ${
        shown.length < found.length
          ? html`<p><button type="button" id="all-wordings" @click=${() => this.lengthen()}>Show all ${found.length.toLocaleString('en')}</button></p>`
          : nothing
      }`;
  }

  private row(wording: SeenWording): TemplateResult {
    const text = listed(wording);
    const cite = citing(text, [wording.first]);
    const isOpen = this.open === wording;
    const taught = this.lessons.find(({ says }) => says.startsWith(`${text}: `));
    const means =
      taught === undefined ? sayUnderstood(wording) : `Lesson: ${taught.says.slice(text.length + 2)}`;
    return html`<tr @mouseenter=${cite} @focusin=${cite}>
        <td class="long"><code>${terminal(text)}</code></td>
        <td class="number">${wording.count.toLocaleString('en')}</td>
        <td class="long">${terminal(means)}</td>
        <td><button type="button" aria-expanded=${isOpen} @click=${(event: Event) => this.toggle(wording, event.currentTarget)}>${isOpen ? 'Leave it' : 'Teach'}<span class="hidden"> ${terminal(text.slice(0, mostNamed))}</span></button> ${linesButton(text, [wording.first])}</td>
      </tr>
      ${
        isOpen
          ? html`<tr><td colspan="4"><lesson-form .wording=${wording} .lessons=${this.lessons.map((l) => l.lesson)} .session=${this.session}></lesson-form></td></tr>`
          : nothing
      }`;
  }

  private toggle(wording: SeenWording, button: EventTarget | null): void {
    this.toggled = button instanceof HTMLElement ? button : null;
    this.open = this.open === wording ? null : wording;
  }

  private lengthen(): void {
    this.isLong = true;
  }

  private onFind({ target }: Event): void {
    if (target instanceof HTMLInputElement) this.words = target.value;
  }

  private onAll({ target }: Event): void {
    if (target instanceof HTMLInputElement) this.isAll = target.checked;
  }
}

customElements.define('wording-form', WordingForm);
