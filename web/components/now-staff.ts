import { html, type PropertyValues, type TemplateResult } from 'lit';
import type { PairHealth } from '../../src/pipeline.ts';
import type { Interval } from '../../src/vocabulary.ts';
import { drawStaff, type StaffDrawing } from '../staff-drawing.ts';
import { PageElement } from './page-element.ts';
import './chart-figure.ts';

const hourMs = 3_600_000;

/** The staff of a pair over the last hour before its newest row: it grows to the right as rows come. */
export class NowStaff extends PageElement {
  static override properties = {
    health: { attribute: false },
    zone: { attribute: false },
    room: { state: true },
  };
  declare health: PairHealth;
  declare zone: string;
  declare room: number;
  private drawing: StaffDrawing | null = null;
  private readonly sizes = new ResizeObserver(() => {
    this.room = this.clientWidth;
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

  override willUpdate(_: PropertyValues<this>): void {
    const { health, zone, room } = this;
    this.drawing = room === 0 ? null : drawStaff(health, lastHour(health.staff), zone, room);
  }

  override render(): TemplateResult {
    const { drawing } = this;
    if (drawing === null) return html`<p class="second">The staff is being drawn.</p>`;
    return html`<chart-figure .spec=${drawing.spec} .label=${drawing.said}></chart-figure>`;
  }
}

function lastHour({ from, to }: Interval): Interval {
  return { from: Math.max(from, to - hourMs), to };
}

customElements.define('now-staff', NowStaff);
