import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { TopLevelSpec } from 'vega-lite';
import { type Drawn, type OnBrush, renderChart } from '../render-chart.ts';
import { PageElement } from './page-element.ts';

/** A chart with its sentence. Fires `brush` with the span a person marked. */
export class ChartFigure extends PageElement {
  static override properties = {
    spec: { attribute: false },
    caption: {},
    label: {},
    hasBrush: { attribute: false },
  };
  declare spec: TopLevelSpec;
  declare caption: string;
  /** What a screen reader speaks; the caption, if it is empty. */
  declare label: string;
  declare hasBrush: boolean;
  private drawn: Drawn | null = null;

  constructor() {
    super();
    this.hasBrush = false;
    this.label = '';
    this.caption = '';
  }

  override render(): TemplateResult {
    return html`<figure>
      <div class="picture" role="img" aria-label=${this.label || this.caption}></div>
      ${this.caption === '' ? nothing : html`<figcaption>${this.caption}</figcaption>`}
    </figure>`;
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has('spec')) void this.draw();
  }

  private async draw(): Promise<void> {
    const host = this.querySelector('.picture');
    if (!(host instanceof HTMLElement)) return;
    const { spec } = this;
    this.drawn?.remove();
    this.drawn = null;
    const drawn = await renderChart(host, spec, this.hasBrush ? this.onBrush : null);
    // Another was asked for meanwhile: this one is stale.
    if (spec === this.spec) this.drawn = drawn;
    else drawn.remove();
  }

  private readonly onBrush: OnBrush = (detail) => {
    this.dispatchEvent(new CustomEvent('brush', { detail }));
  };

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.drawn?.remove();
    this.drawn = null;
  }
}

customElements.define('chart-figure', ChartFigure);
