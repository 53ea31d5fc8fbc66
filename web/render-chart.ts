import { Error as errorLevel, textMetrics } from 'vega';
import embed from 'vega-embed';
import { expressionInterpreter } from 'vega-interpreter';
import type { TopLevelSpec } from 'vega-lite';

/** A chart that stands in the page. */
export interface Drawn {
  /** Draws other rows with the same specification. */
  update(rows: readonly object[]): Promise<void>;
  remove(): void;
}

const dataName = 'rows';

/**
 * Draws a specification into an element. Expressions are interpreted, never compiled, and widths of texts are estimated as
 * in Node, so that a report saved from the page has the same pictures as the command's.
 */
export async function renderChart(host: HTMLElement, spec: TopLevelSpec): Promise<Drawn> {
  textMetrics.canvas(false);
  // In an element of its own: the one that is drawn into gets a role and a name that say nothing.
  const place = host.appendChild(document.createElement('div'));
  const { view, finalize } = await embed(place, named(spec), {
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
  return {
    update: async (rows) => {
      await view.data(dataName, [...rows]).runAsync();
      silence(host);
    },
    remove: () => {
      finalize();
      place.remove();
    },
  };
}

/** With a name for its rows, so that others can take their place. */
function named(spec: TopLevelSpec): TopLevelSpec {
  const rows = rowsOf(spec);
  return rows.length === 0 ? spec : { ...spec, data: { name: dataName, values: [...rows] } };
}

/** The rows that a specification draws; empty where each of its layers has its own. */
export function rowsOf({ data }: TopLevelSpec): readonly object[] {
  if (data == null || !('values' in data) || !Array.isArray(data.values)) return [];
  return Array.from<unknown>(data.values).filter((row) => typeof row === 'object' && row !== null);
}

/** The figure says in a sentence what the picture shows: its parts are strokes without names, and play no roles. */
function silence(host: HTMLElement): void {
  for (const part of host.querySelectorAll('[role], [aria-roledescription], [aria-label]')) {
    part.removeAttribute('role');
    part.removeAttribute('aria-roledescription');
    part.removeAttribute('aria-label');
  }
}
