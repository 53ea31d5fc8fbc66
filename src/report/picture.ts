import { type Config, parse, textMetrics, View } from 'vega';
import { expressionInterpreter } from 'vega-interpreter';
import { compile, type TopLevelSpec } from 'vega-lite';

/**
 * A Vega-Lite specification as SVG text, without a browser: the same bytes wherever it runs, since text widths are
 * estimated and expressions are interpreted, never compiled.
 */
export async function picture(spec: TopLevelSpec): Promise<string> {
  textMetrics.canvas(false);
  const { spec: compiled } = compile(spec);
  const config: Config = {};
  const view = new View(parse(compiled, config, { ast: true }), {
    expr: expressionInterpreter,
    renderer: 'none',
  });
  const svg = await view.toSVG();
  view.finalize();
  return svg;
}
