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

/**
 * Draws a specification into an element. Expressions are interpreted, never compiled, and widths of texts are estimated as
 * in Node, so that a report saved from the page has the same pictures as the command's. `onBrush` hears of the chart's
 * selection named `brush`; `null` if it has none.
 */
export async function renderChart(
  host: HTMLElement,
  spec: TopLevelSpec,
  onBrush: OnBrush | null,
): Promise<Drawn> {
  textMetrics.canvas(false);
  // In an element of its own: the one that is drawn into gets a role and a name that say nothing.
  const place = host.appendChild(document.createElement('div'));
  const { view, finalize } = await embed(place, spec, {
    actions: false,
    ast: true,
    defaultStyle: false,
    expr: expressionInterpreter,
    // A mark that no bring-up has leaves its channel without an extent: nothing to warn of.
    logLevel: errorLevel,
    renderer: 'svg',
    tooltip: false,
  });
  silence(host);
  if (onBrush !== null)
    view.addSignalListener('brush', (_, value: { readonly x?: readonly [number, number] }) => {
      view.runAfter(() => silence(host));
      const [from, to] = value.x ?? [];
      onBrush(from === undefined || to === undefined ? null : { from: Number(from), to: Number(to) });
    });
  return {
    remove: () => {
      finalize();
      place.remove();
    },
  };
}

/** The figure says in a sentence what the picture shows: its parts are strokes without names, and play no roles. */
function silence(host: HTMLElement): void {
  for (const part of host.querySelectorAll('[role], [aria-roledescription], [aria-label]')) {
    part.removeAttribute('role');
    part.removeAttribute('aria-roledescription');
    part.removeAttribute('aria-label');
  }
}
