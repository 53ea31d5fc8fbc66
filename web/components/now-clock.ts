import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { runningClock } from '../../src/procedure/running-clock.ts';
import { sayInstantBounds } from '../../src/report/words.ts';
import type { SwapNow } from '../../src/vocabulary.ts';
import {
  type LogClock,
  sayClock,
  sayExpected,
  sayWait,
  titleOfWait,
  type Wait,
  waitOf,
} from '../swap-clock.ts';
import { type SwapMoment, type SwapNews, swapNews } from '../swap-news.ts';
import { PageElement } from './page-element.ts';

const tickMs = 1000;

/**
 * The clock of what a pair waits for, which goes on each second by the log's own time: in the page, in the title of the tab, and
 * announced where a limit passes or a wait ends. Fires `news`, bubbling, with what is announced.
 */
export class NowClock extends PageElement {
  static override properties = {
    now: { attribute: false },
    arrivedAt: { attribute: false },
    zone: { attribute: false },
    moment: { state: true },
  };
  declare now: SwapNow;
  /** When the newest row came, by the clock here; `null`: nobody saw it come. */
  declare arrivedAt: number | null;
  declare zone: string;
  declare moment: number;
  private last: SwapMoment | null = null;
  private news: SwapNews | null = null;
  private timer: ReturnType<typeof setInterval> | undefined;

  constructor() {
    super();
    this.arrivedAt = null;
    this.moment = Date.now();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.timer = setInterval(() => {
      this.moment = Date.now();
    }, tickMs);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearInterval(this.timer);
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('now')) this.moment = Date.now();
    const after: SwapMoment = { now: this.now, wait: waitOf(this.now, this.clock()) };
    if (this.last?.now.pair !== this.now.pair) this.news = null;
    const news = swapNews(this.last, after);
    this.last = after;
    if (news === null) return;
    this.news = news;
    this.dispatchEvent(new CustomEvent('news', { bubbles: true, detail: news }));
  }

  override updated(): void {
    const title = titleOfWait(this.now, waitOf(this.now, this.clock()));
    if (document.title !== title) document.title = title;
  }

  private clock(): LogClock {
    const { now, arrivedAt, moment } = this;
    if (arrivedAt === null) return { at: now.at, state: 'stands' };
    const { at, isSilent } = runningClock(now, arrivedAt, moment);
    return { at, state: isSilent ? 'silent' : 'runs' };
  }

  override render(): TemplateResult {
    const { now, zone, moment, news } = this;
    const clock = this.clock();
    const wait = waitOf(now, clock);
    return html`${wait === null ? nothing : runningLine(wait)}
      <div class="clock-facts">
        ${this.facts()}
        <p class=${clock.state === 'silent' ? 'inconclusive' : 'second'}>${sayClock(now, clock, zone, moment).join(' ')}</p>
      </div>
      <p class="hidden" role="status">${news?.isUrgent === false ? news.words : ''}</p>
      <p class="hidden" role="alert">${news?.isUrgent === true ? news.words : ''}</p>`;
  }

  private facts(): TemplateResult | typeof nothing {
    const { now, zone } = this;
    const { since, limitSeconds } = now;
    const expected = sayExpected(now);
    if (since === null && expected === '') return nothing;
    const limitAt = since === null || limitSeconds === null ? null : since.time + limitSeconds * 1000;
    return html`<p>${since === null ? nothing : `Since ${sayInstantBounds(since, zone, now.at)}`}${limitAt === null ? nothing : `, limit at ${sayInstantBounds({ time: limitAt, earliest: limitAt }, zone, now.at)}`}${since === null ? nothing : '. '}${expected === '' ? nothing : `Here, same model and firmware: ${expected}.`}</p>`;
  }
}

/** The wait and its limit, each on one line; the second may stand under the first. */
function runningLine(wait: Wait): TemplateResult {
  const parts = sayWait(wait).split(/ (?=of )/);
  return html`<p class=${wait.isPast ? 'running past' : 'running'} role="timer">
    <b class="figure">${parts.map((part) => html`<span>${part}</span> `)}</b>${wait.isPast ? html` <span class="fail">limit passed</span>` : nothing}
  </p>`;
}

customElements.define('now-clock', NowClock);
