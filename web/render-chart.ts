import { Error as errorLevel, textMetrics } from 'vega';
import embed from 'vega-embed';
import { expressionInterpreter } from 'vega-interpreter';
import type { TopLevelSpec } from 'vega-lite';

/** A chart that stands in the page. */
export interface Drawn {
  remove(): void;
}

/** A part of the time axis that a person marked, in the chart's own milliseconds; `null` where the mark was taken away. */
export type OnBrush = (span: { readonly from: number; readonly to: number } | null) => void;

/** What a chart tells of a person's hand. */
export interface ChartHands {
  readonly onBrush: OnBrush;
  /** The row of the mark that is pointed at. */
  readonly onPoint: (row: unknown) => void;
}

/**
 * Draws a specification into an element. Expressions are interpreted, never compiled, and widths of texts are estimated as
 * in Node, so that a report saved from the page has the same pictures as the command's. `hands` hears of the chart's
 * selection named `brush` and of its marks; `null` if it has no such selection.
 */
export async function renderChart(
  host: HTMLElement,
  spec: TopLevelSpec,
  hands: ChartHands | null,
): Promise<Drawn> {
  textMetrics.canvas(false);
  const { view, finalize } = await embed(host, spec, {
    actions: false,
    ast: true,
    defaultStyle: false,
    expr: expressionInterpreter,
    // A mark that no bring-up has leaves its channel without an extent: nothing to warn of.
    logLevel: errorLevel,
    renderer: 'svg',
    tooltip: false,
  });
  if (hands !== null) {
    view.addEventListener('mouseover', (_, item) => hands.onPoint(item?.datum));
    view.addSignalListener('brush', (_, value: { readonly x?: readonly [number, number] }) => {
      const [from, to] = value.x ?? [];
      hands.onBrush(from === undefined || to === undefined ? null : { from: Number(from), to: Number(to) });
    });
  }
  return {
    remove: () => {
      finalize();
      host.replaceChildren();
    },
  };
}
