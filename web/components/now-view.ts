import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { terminal } from '../../src/report/escape.ts';
import type { Swap, SwapNow } from '../../src/vocabulary.ts';
import type { PageState } from '../page-state.ts';
import { lastSwapOf } from '../page-state.ts';
import { putOnPaper } from '../paper.ts';
import type { PairModel } from '../protocol.ts';
import type { SwapNews } from '../swap-news.ts';
import { openTones, type Tones } from '../tones.ts';
import type { View } from '../view.ts';
import { htmlOf, swapReports } from '../view-reports.ts';
import { keepAwake, type WakeLock } from '../wake-lock.ts';
import { followBar, followedLine } from './follow-bar.ts';
import { holdPoint } from './hold-point.ts';
import './now-clock.ts';
import { halvesNow, lastLines } from './now-parts.ts';
import './now-staff.ts';
import { PageElement } from './page-element.ts';
import { pairLinks } from './pair-links.ts';
import './save-bar.ts';
import type { Reports } from './save-bar.ts';

/** A swap while it runs: what is awaited with its clock, the hold point, both halves, the last hour, the last lines. */
export class NowView extends PageElement {
  static override properties = {
    state: { attribute: false },
    asked: { state: true },
    sound: { state: true },
  };
  declare state: PageState;
  /** A pair that is not in work, as the worker told of it. */
  declare asked: { readonly site: PageState['site']; readonly now: SwapNow } | null;
  /** What is said of the sound; `null`: it is off. */
  declare sound: string | null;
  private tones: Tones | null = null;
  private awake: WakeLock | null = null;
  private reports: { readonly of: Swap; readonly given: Reports } | null = null;

  constructor() {
    super();
    this.asked = null;
    this.sound = null;
    this.addEventListener('news', (event) => event instanceof CustomEvent && this.hear(event.detail));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.awake?.end();
    this.tones?.end();
    this.awake = null;
    this.tones = null;
    this.sound = null;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('state')) void this.ask();
    const isFollowed = this.state.followed !== null;
    if (isFollowed && this.awake === null) this.awake = keepAwake(() => this.requestUpdate());
    if (!isFollowed) this.awake?.end();
    if (!isFollowed) this.awake = null;
  }

  override updated(): void {
    const { reports } = this;
    putOnPaper(this, reports === null ? null : { of: reports.of, write: () => htmlOf(reports.given) });
  }

  /** Of a pair that is not in work it is asked how it stands before a removal. */
  private async ask(): Promise<void> {
    const { site, chosen, session } = this.state;
    if (chosen.pair === '' || this.asked?.site === site || site.now.some((n) => n.pair === chosen.pair))
      return;
    try {
      const now = await session.ask<'now'>({ kind: 'now', pair: chosen.pair });
      if (now !== null && this.state.site === site) this.asked = { site, now };
    } catch (detail) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail }));
    }
  }

  override render(): TemplateResult {
    const { site, chosen, followed } = this.state;
    const asked = this.asked?.now.pair === chosen.pair ? this.asked.now : undefined;
    const now = site.now.find((n) => n.pair === chosen.pair) ?? asked;
    const model = site.pairs.find((p) => p.health.pair === chosen.pair);
    const bar = followBar(
      followed,
      site.given.map(({ name }) => name),
    );
    if (now === undefined || model === undefined) {
      this.reports = null;
      return html`<div class="top">${this.chooser()}</div>${bar}${this.nothingInWork()}${this.aids()}`;
    }
    const reports = this.reportsOf(model);
    return html`<div class="top">${this.chooser()}${reports === null ? nothing : html`<save-bar .reports=${reports}></save-bar>`}</div>
      ${bar}
      ${this.question(now)}
      ${holdPoint(now.holdPoint)}
      ${halvesNow(now.halves)}
      <div class="now-past">
        <section id="now-staff"><h2>The last hour</h2><now-staff .health=${model.health} .zone=${site.zone}></now-staff></section>
        ${lastLines(now.lines)}
      </div>
      ${this.aids()}`;
  }

  /** What is awaited, in the largest type, with its clock. */
  private question(now: SwapNow): TemplateResult {
    const { zone } = this.state.site;
    const arrivedAt = this.state.arrivals.get(now.pair)?.arrivedAt ?? null;
    return html`<h1 class=${now.awaits === null ? 'verdict' : 'verdict awaited'}>${titleOf(now)}</h1>
      <now-clock .now=${now} .arrivedAt=${arrivedAt} .zone=${zone}></now-clock>`;
  }

  private nothingInWork(): TemplateResult {
    const { site } = this.state;
    if (site.pairs.length === 0)
      return html`<h1 class="verdict">No swap is under way: no pair is known yet.</h1>
        <p>This view waits for a log that names a pair. <a href="#sources">Sources</a> says how each file was read.</p>`;
    return html`<h1 class="verdict">No swap is under way.</h1>
      <p>This view waits for the first row that tells of a module removed. Choose a pair to see its hold point before a removal.</p>`;
  }

  private chooser(): TemplateResult {
    const { site, chosen } = this.state;
    const inWork = site.now.map(({ pair }) => pair);
    const others = site.attention.map(({ pair }) => pair).filter((pair) => !inWork.includes(pair));
    const all = [...(chosen.pair === '' ? [''] : []), ...inWork, ...others];
    const say = (pair: string): string => {
      if (pair === '') return 'Choose a pair';
      const now = site.now.find((one) => one.pair === pair);
      return `${terminal(pair)}, ${now === undefined ? 'not in work' : now.awaits === null ? 'over' : 'in work'}`;
    };
    const choose = ({ target }: Event): void => {
      const pair = target instanceof HTMLSelectElement ? all[target.selectedIndex] : undefined;
      if (pair === undefined || pair === '') return;
      const detail = { ...lastSwapOf(site.pairs, pair), view: 'now' };
      this.dispatchEvent(new CustomEvent('choose', { bubbles: true, detail }));
    };
    return html`<p class="line no-print"><label>Pair <select id="now-pair" @change=${choose}>
      ${all.map((pair) => html`<option .selected=${pair === chosen.pair}>${say(pair)}</option>`)}
    </select></label>${chosen.pair === '' ? nothing : pairLinks(chosen.pair)}</p>`;
  }

  /** The same object for the same swap: it is written once. */
  private reportsOf(model: PairModel): Reports | null {
    const swap = model.verification.swaps.at(-1);
    if (swap === undefined) this.reports = null;
    else if (this.reports?.of !== swap)
      this.reports = { of: swap, given: swapReports(() => this.state, model, swap) };
    return this.reports?.given ?? null;
  }

  /** What keeps the page seen and heard. */
  private aids(): TemplateResult {
    const said = this.awake?.said() ?? '';
    const { followed } = this.state;
    return html`${followed === null ? nothing : followedLine(followed)}<p class="line no-print"><label><input type="checkbox" id="sound" .checked=${this.sound !== null} @change=${this.onSound} /> Sound when a limit passes or a wait ends</label>
      <span class="second" role="status">${[this.sound ?? '', said].filter((words) => words !== '').join(' ')}</span></p>`;
  }

  private onSound({ target }: Event): void {
    const isOn = target instanceof HTMLInputElement && target.checked;
    if (!isOn) this.tones?.end();
    this.tones = isOn ? openTones() : null;
    this.sound = isOn ? '' : null;
    if (isOn) this.play(false);
  }

  private hear({ isUrgent }: SwapNews): void {
    if (this.tones !== null) this.play(isUrgent);
  }

  private play(isUrgent: boolean): void {
    const isHeard = this.tones?.play(isUrgent) ?? false;
    this.sound = isHeard ? '' : 'The browser plays no sound until something on this page is pressed.';
  }
}

/**
 * What is awaited, as the title of the view. Before a first removal it is a ready partner for long enough; a wait for the removal itself
 * would read as a demand.
 */
function titleOf({ pair, awaits, says, swap, limitSeconds }: SwapNow): string {
  if (swap === null && limitSeconds !== null)
    return `${terminal(pair)}, no swap under way: waiting for ${terminal(says)}`;
  if (swap === null) return `${terminal(pair)}: no swap is under way.`;
  return awaits === null ? terminal(says) : `${terminal(pair)}: waiting for ${terminal(says)}`;
}

customElements.define('now-view', NowView);

export const nowView: View = {
  id: 'now',
  title: 'Swap now',
  render: (state) => html`<now-view .state=${state}></now-view>`,
};
