import { html, nothing, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import { sayInstant } from '../../src/report/words.ts';
import type { Survey, TriedStamps } from '../../src/vocabulary.ts';
import { Refused, type Session } from '../session.ts';
import { type StampsTyped, stampsRule, yearProblem } from '../stamps-choice.ts';
import { allZones, findZones, offsetOf, zoneNamed, zoneProblem } from '../zone-search.ts';
import { PageElement } from './page-element.ts';

const mostFiles = 6;
const nothingTyped: StampsTyped = { zone: '', order: '', year: '' };
const listed = 8;

/** Time zone, order of day and month, and year of stamps that leave them open; the first stamps stand beside, as they would be read. Fires `rule` and `apply`. */
export class StampsForm extends PageElement {
  static override properties = {
    session: { attribute: false },
    survey: { attribute: false },
    typed: { state: true },
    tried: { state: true },
    said: { state: true },
  };
  declare session: Session;
  declare survey: Survey | null;
  declare typed: StampsTyped;
  declare tried: readonly TriedStamps[];
  declare said: string;
  private readonly zones = allZones();

  constructor() {
    super();
    this.typed = nothingTyped;
    this.tried = [];
    this.said = '';
  }

  override willUpdate(changed: ReadonlyMap<PropertyKey, unknown>): void {
    if (changed.has('survey') && this.survey !== null) void this.look();
  }

  override render(): TemplateResult {
    const { zone, order, year } = this.typed;
    const wrongYear = yearProblem(year);
    const option = (value: string, words: string): TemplateResult =>
      html`<option value=${value} ?selected=${order === value}>${words}</option>`;
    return html`<form class="time-format" @submit=${this.onSubmit} @input=${this.onInput}>
      ${this.zoneFields(zone)}
      <p><label>Order of day and month <select name="order">
        ${option('', 'as each file shows')}${option('day-first', 'day first: 31.12.2026')}${option('month-first', 'month first: 12/31/2026')}
      </select></label></p>
      <p><label>Year of the first row, where none is printed <input name="year" inputmode="numeric" .value=${year} aria-describedby="year-said" aria-invalid=${wrongYear !== null} autocomplete="off" /></label>
        <span class="inconclusive" id="year-said">${wrongYear ?? ''}</span></p>
      ${this.stamps()}
      <p role="status" class="inconclusive" id="stamps-said">${this.said}</p>
      <p class="choices"><button type="submit" id="apply-stamps">Apply and read again</button></p>
    </form>`;
  }

  private zoneFields(zone: string): TemplateResult {
    const found = findZones(this.zones, zone, Date.now());
    const chosen = zoneNamed(zone);
    const problem = found.length === 0 ? zoneProblem(zone) : null;
    const isListed = zone.trim() !== '' && found.length > 0;
    const said =
      problem ??
      (chosen === null || zone.trim() === '' ? '' : `${chosen}: ${offsetOf(chosen, Date.now())} now.`);
    return html`<p><label>Time zone of timestamps that name none <input name="zone" type="search" .value=${zone} aria-describedby="zone-said" aria-invalid=${problem !== null} placeholder="part of its name, such as Lisbon" autocomplete="off" spellcheck="false" /></label>
        <span class=${problem === null ? 'second' : 'inconclusive'} id="zone-said" role="status">${terminal(said)}</span></p>
      ${
        isListed
          ? html`<p><label>Zones found <select name="found" size=${Math.max(2, Math.min(listed, found.length))} @change=${this.onZone}>
              ${found.map(({ name, offset }) => html`<option value=${name} ?selected=${name === chosen}>${name.replaceAll('_', ' ')}, ${offset} now</option>`)}
            </select></label></p>`
          : nothing
      }`;
  }

  private stamps(): TemplateResult | typeof nothing {
    if (this.tried.length === 0) return nothing;
    // Those in which something is open or wrong first.
    const open = this.tried.toSorted((a, b) => openness(b) - openness(a));
    const more = open.length - mostFiles;
    const isOpen = open.some((tried) => openness(tried) > 1) || this.typed !== nothingTyped;
    return html`<details class="fold" ?open=${isOpen}><summary>First timestamps as they would be read</summary>
      <div class="scroll"><table class="preview">
        <caption class="second">In UTC</caption>
        <thead><tr><th scope="col">File</th><th scope="col">Timestamp</th><th scope="col">Read as</th></tr></thead>
        <tbody>${open
          .slice(0, mostFiles)
          .flatMap(({ file, stamps }) =>
            distinct(stamps).map(
              ({ text, at, problem }) =>
                html`<tr><td class="long">${terminal(file)}</td><td class="long"><code>${terminal(text.slice(0, 60))}</code></td><td class=${at === null ? 'inconclusive' : 'clock'}>${at === null ? terminal(problem ?? '') : sayInstant(at, 'UTC')}</td></tr>`,
            ),
          )}</tbody>
      </table></div>
      ${more > 0 ? html`<p class="second">and those of ${more.toLocaleString('en')} more ${more === 1 ? 'file' : 'files'}.</p>` : nothing}</details>`;
  }

  private onInput({ target }: Event): void {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    if (target.name === 'found') return;
    this.typed = { ...this.typed, [target.name]: target.value };
    this.said = '';
    void this.look();
  }

  private onZone({ target }: Event): void {
    if (!(target instanceof HTMLSelectElement) || target.value === '') return;
    this.typed = { ...this.typed, zone: target.value };
    void this.look();
  }

  private async look(): Promise<void> {
    const { typed } = this;
    const rule = stampsRule(typed);
    const { zone, order, year } =
      rule.kind === 'rule' ? rule.lesson : { zone: null, order: null, year: null };
    try {
      const tried = await this.session.ask<'stamps'>({ kind: 'stamps', zone, order, year });
      if (typed === this.typed) this.tried = tried;
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      this.said = `${error.refusal.what} ${error.refusal.fix}`;
    }
  }

  private onSubmit(event: Event): void {
    event.preventDefault();
    const rule = stampsRule(this.typed);
    if (rule.kind !== 'rule') {
      this.said = rule.says;
      this.querySelector<HTMLElement>(`[name="${rule.field}"]`)?.focus();
      return;
    }
    const detail = [{ key: 'time', says: rule.says, lessons: [rule.lesson] }];
    this.dispatchEvent(new CustomEvent('rule', { bubbles: true, detail }));
    this.dispatchEvent(new CustomEvent('apply', { bubbles: true }));
  }
}

/** Each timestamp once. */
function distinct(stamps: TriedStamps['stamps']): TriedStamps['stamps'] {
  return stamps.filter(({ text }, index) => stamps.findIndex((s) => s.text === text) === index);
}

function openness({ isZoneOpen, stamps }: TriedStamps): number {
  return (stamps.some(({ at }) => at === null) ? 2 : 0) + (isZoneOpen ? 1 : 0);
}

customElements.define('stamps-form', StampsForm);
