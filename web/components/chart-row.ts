import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { FleetFigure } from '../../src/report/fleet-figures.ts';
import { chartWidth, fitted } from '../fitted.ts';
import { PageElement } from './page-element.ts';
import './chart-figure.ts';

/** A window that gets wider by less than this draws nothing anew. */
const leastChange = 24;

/** Charts as wide as the column, two side by side where they fit. */
export class ChartRow extends PageElement {
  static override properties = { figures: { attribute: false }, room: { state: true } };
  declare figures: readonly FleetFigure[];
  declare room: number;
  private drawn: readonly FleetFigure[] = [];
  private readonly sizes = new ResizeObserver(() => {
    if (Math.abs(this.clientWidth - this.room) >= leastChange) this.room = this.clientWidth;
  });

  constructor() {
    super();
    this.room = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sizes.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sizes.disconnect();
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('figures') && !changed.has('room')) return;
    const width = chartWidth(this.room, this.figures.length);
    this.drawn = this.figures.map((figure) => ({ ...figure, spec: fitted(figure.spec, width) }));
  }

  override render(): TemplateResult | typeof nothing {
    if (this.room === 0) return nothing;
    const width = chartWidth(this.room, this.figures.length);
    return html`<div class=${width < this.room ? 'charts two' : 'charts'}>
      ${this.drawn.map(({ spec, caption }) => html`<chart-figure .spec=${spec} .caption=${caption}></chart-figure>`)}
    </div>`;
  }
}

customElements.define('chart-row', ChartRow);
