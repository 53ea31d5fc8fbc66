import { html, nothing, type TemplateResult } from 'lit';
import { cautions } from '../../src/report/cautions.ts';
import { howComputedTitle } from '../../src/report/fleet-section.ts';
import { fleetSections } from '../../src/report/fleet-sections.ts';
import { rankingRule } from '../../src/report/say-weight.ts';
import type { PageState } from '../page-state.ts';
import { PageElement } from './page-element.ts';

declare const STEADYPAIR_VERSION: string;

/** What is used where nobody asked for another in the fleet view: the methods are the same for all. */
const question = { by: 'firmware', swaps: 10, readyDays: 1 } as const;

/** How every figure of the page is found that is no count of log lines. */
const general: readonly (readonly [string, string])[] = [
  [
    'Times and bounds',
    'An event of a journal has the time of its entry. A value that was polled changed between the reading before and the reading that shows it: both are given, as bounds. A duration between two such events has the shortest and the longest that fit its bounds, and a limit is exceeded only if the shortest is past it.',
  ],
  [
    'Unobserved time',
    'Where a log has a gap, the staff is hatched, and the time counts neither as ready nor as not ready.',
  ],
  [
    'Checks of a swap',
    'Each check is pass, fail, inconclusive (the bounds or a gap allow both) or not observed (the signal was never logged). A swap is not verified if a check fails. It is inconclusive if a check is, if the swap is not finished, or if the removal, the synchronisation or the time after it was not observed.',
  ],
];

interface Method {
  readonly title: string;
  readonly text: string;
}

/** The last line of every view: the version, and how figures are computed, in the words of the reports. */
export class AboutPage extends PageElement {
  static override properties = {
    state: { attribute: false },
    isOpen: { state: true },
    methods: { state: true },
  };
  declare state: PageState | null;
  declare isOpen: boolean;
  declare methods: readonly Method[];
  private askedOf: PageState['session'] | null = null;

  constructor() {
    super();
    this.state = null;
    this.isOpen = false;
    this.methods = [];
  }

  override render(): TemplateResult {
    return html`<footer class="about no-print">
        Steadypair ${STEADYPAIR_VERSION}.
        <button type="button" class="link" aria-expanded=${this.isOpen} aria-controls="computed" @click=${() => void this.turn()}>How figures are computed</button>
      </footer>
      ${this.isOpen ? this.content() : nothing}`;
  }

  private content(): TemplateResult {
    const all = [
      ...general.map(([title, text]) => ({ title, text })),
      { title: "Won't sync: causes", text: rankingRule },
      ...this.methods,
    ];
    return html`<section id="computed" tabindex="-1" class="no-print">
      <h2>${howComputedTitle}</h2>
      ${all.map(({ title, text }) => html`<h3>${title}</h3><p>${text}</p>`)}
      <h3>Cautions</h3>
      ${cautions.map((caution) => html`<p>${caution}</p>`)}
    </section>`;
  }

  private async turn(): Promise<void> {
    this.isOpen = !this.isOpen;
    if (!this.isOpen) return;
    await this.updateComplete;
    const section = this.querySelector('#computed');
    if (section instanceof HTMLElement) section.focus();
    await this.look();
  }

  /** The methods of the fleet review say on how much they rest here: they are asked for once for what was read. */
  private async look(): Promise<void> {
    const { state } = this;
    if (state === null || state.site.pairs.length === 0 || state.session === this.askedOf) return;
    this.askedOf = state.session;
    this.methods = [];
    try {
      const fleet = await state.session.ask<'fleet'>({ kind: 'fleet', question });
      if (this.askedOf !== state.session) return;
      this.methods = fleetSections(fleet, state.site.zone).map(({ title, howComputed }) => ({
        title: `Fleet: ${title}`,
        text: howComputed,
      }));
    } catch (detail) {
      this.dispatchEvent(new CustomEvent('problem', { bubbles: true, detail }));
    }
  }
}

customElements.define('about-page', AboutPage);
