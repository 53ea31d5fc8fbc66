import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import type { TopLevelSpec } from 'vega-lite';
import { type Drawn, renderChart, rowsOf } from '../render-chart.ts';
import { PageElement } from './page-element.ts';

/** A chart with its sentence. Other rows with the same specification take the place of the old ones at once: they can be moved. */
export class ChartFigure extends PageElement {
  static override properties = {
    spec: { attribute: false },
    caption: {},
    label: {},
  };
  declare spec: TopLevelSpec;
  declare caption: string;
  /** What a screen reader speaks; the caption, if it is empty. */
  declare label: string;
  private drawn: Drawn | null = null;
  private drawnAs = '';

  constructor() {
    super();
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
    const rows = rowsOf(spec);
    const drawnAs = rows.length === 0 ? '' : JSON.stringify({ ...spec, data: null });
    if (this.drawn !== null && drawnAs !== '' && drawnAs === this.drawnAs) return this.drawn.update(rows);
    // Each in a task of its own: a view with many pictures can be scrolled and left while they come.
    await new Promise((resolve) => setTimeout(resolve));
    if (spec !== this.spec || !this.isConnected) return;
    this.drawn?.remove();
    this.drawn = null;
    const drawn = await renderChart(host, spec);
    // Another was asked for meanwhile: this one is stale.
    if (spec !== this.spec) return drawn.remove();
    this.drawn = drawn;
    this.drawnAs = drawnAs;
    this.width.observe(host);
    reachByKeyboard(host);
  }

  private readonly width = new ResizeObserver(([entry]) => {
    if (entry?.target instanceof HTMLElement) reachByKeyboard(entry.target);
  });

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.width.disconnect();
    this.drawn?.remove();
    this.drawn = null;
  }
}

/** A picture that is wider than its place scrolls: then the keyboard can come to it, and only then does it stop there. */
function reachByKeyboard(host: HTMLElement): void {
  if (host.scrollWidth > host.clientWidth) host.tabIndex = 0;
  else host.removeAttribute('tabindex');
}

customElements.define('chart-figure', ChartFigure);
