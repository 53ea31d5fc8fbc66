/** Each rule with files that break it: a path below a project, and its text. */
export const broken: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
  ['layer-import', { 'src/import/a.ts': "import '../timeline/b.ts';", 'src/timeline/b.ts': 'export {};' }],
  [
    'layer-import/bytes',
    { 'src/import/bytes/a.ts': "import '../clock/b.ts';", 'src/import/clock/b.ts': 'export {};' },
  ],
  [
    'layer-import/clock',
    { 'src/import/clock/a.ts': "import '../phrasebook/b.ts';", 'src/import/phrasebook/b.ts': 'export {};' },
  ],
  [
    'layer-import/phrasebook',
    { 'src/import/phrasebook/a.ts': "import '../layouts/b.ts';", 'src/import/layouts/b.ts': 'export {};' },
  ],
  [
    'layer-import/changes',
    {
      'src/import/changes/a.ts': "import type { B } from '../row-cache/b.ts'; export type A = B;",
      'src/import/row-cache/b.ts': 'export type B = 1;',
    },
  ],
  [
    'layer-import/layouts',
    { 'src/import/layouts/a.ts': "import '../row-cache/b.ts';", 'src/import/row-cache/b.ts': 'export {};' },
  ],
  [
    'layer-import/drafts',
    { 'src/import/drafts/a.ts': "import '../row-cache/b.ts';", 'src/import/row-cache/b.ts': 'export {};' },
  ],
  [
    'layer-import/row-cache',
    {
      'src/import/row-cache/a.ts': "import '../phrasebook/b.ts';",
      'src/import/phrasebook/b.ts': 'export {};',
    },
  ],
  [
    'layer-import/stored',
    { 'src/import/stored/a.ts': "import '../import-files.ts';", 'src/import/import-files.ts': 'export {};' },
  ],
  [
    'layer-statistics',
    { 'src/statistics/a.ts': "import '../timeline/b.ts';", 'src/timeline/b.ts': 'export {};' },
  ],
  [
    'layer-charts',
    {
      'src/charts/a.ts': "import type { B } from '../report/b.ts'; export type A = B;",
      'src/report/b.ts': 'export type B = 1;',
    },
  ],
  ['layer-timeline', { 'src/timeline/a.ts': "import '../analyze/b.ts';", 'src/analyze/b.ts': 'export {};' }],
  ['layer-analyze', { 'src/analyze/a.ts': "import '../verify/b.ts';", 'src/verify/b.ts': 'export {};' }],
  ['layer-procedure', { 'src/procedure/a.ts': "import '../verify/b.ts';", 'src/verify/b.ts': 'export {};' }],
  ['layer-verify', { 'src/verify/a.ts': "import '../import/b.ts';", 'src/import/b.ts': 'export {};' }],
  ['layer-fleet', { 'src/fleet/a.ts': "import '../analyze/b.ts';", 'src/analyze/b.ts': 'export {};' }],
  ['layer-diagnose', { 'src/diagnose/a.ts': "import '../analyze/b.ts';", 'src/analyze/b.ts': 'export {};' }],
  ['layer-report', { 'src/report/a.ts': "import '../analyze/b.ts';", 'src/analyze/b.ts': 'export {};' }],
  ['layer-bundle', { 'src/bundle/a.ts': "import '../timeline/b.ts';", 'src/timeline/b.ts': 'export {};' }],
  ['layer-cli', { 'src/cli/a.ts': "import '../timeline/b.ts';", 'src/timeline/b.ts': 'export {};' }],
  ['layer-pipeline', { 'src/pipeline.ts': "import './report/b.ts';", 'src/report/b.ts': 'export {};' }],
  [
    'layer-vocabulary',
    { 'src/vocabulary.ts': "import './timeline/b.ts';", 'src/timeline/b.ts': 'export {};' },
  ],
  [
    'siblings-layouts',
    {
      'src/import/layouts/readings.ts': "import './journal.ts';",
      'src/import/layouts/journal.ts': 'export {};',
    },
  ],
  [
    'siblings-analyze',
    { 'src/analyze/flapping.ts': "import './exposure.ts';", 'src/analyze/exposure.ts': 'export {};' },
  ],
  [
    'siblings-verify',
    { 'src/verify/soaked.ts': "import './light-steady.ts';", 'src/verify/light-steady.ts': 'export {};' },
  ],
  [
    'siblings-diagnose',
    {
      'src/diagnose/link-down.ts': "import './poor-seating.ts';",
      'src/diagnose/poor-seating.ts': 'export {};',
    },
  ],
  [
    'siblings-charts',
    { 'src/charts/staff.ts': "import './bring-ups.ts';", 'src/charts/bring-ups.ts': 'export {};' },
  ],
  [
    'list-layouts',
    {
      'src/import/read-rows.ts': "import './layouts/journal.ts';",
      'src/import/layouts/journal.ts': 'export {};',
    },
  ],
  [
    'list-analyze',
    { 'src/pipeline.ts': "import './analyze/flapping.ts';", 'src/analyze/flapping.ts': 'export {};' },
  ],
  [
    'list-verify',
    { 'src/pipeline.ts': "import './verify/soaked.ts';", 'src/verify/soaked.ts': 'export {};' },
  ],
  [
    'list-diagnose',
    { 'src/pipeline.ts': "import './diagnose/link-down.ts';", 'src/diagnose/link-down.ts': 'export {};' },
  ],
  ['bundled-packages-only', { 'src/report/a.ts': "import 'd3-scale';" }],
  ['door-vega-lite', { 'src/analyze/a.ts': "import 'vega-lite';" }],
  ['door-@zip.js/zip.js', { 'src/import/a.ts': "import '@zip.js/zip.js/lib/zip-core-native.js';" }],
  ['door-fflate', { 'src/bundle/a.ts': "import 'fflate';" }],
  ['door-tinyglobby', { 'src/cli/a.ts': "import 'tinyglobby';" }],
  ['door-temporal-polyfill', { 'src/timeline/a.ts': "import 'temporal-polyfill';" }],
  ['door-valibot', { 'src/analyze/a.ts': "import 'valibot';" }],
  ['door-@stdlib', { 'src/statistics/a.ts': "import '@stdlib/stats-base-dists-gamma-cdf';" }],
  ['door-arquero', { 'src/fleet/a.ts': "import 'arquero';" }],
  ['door-papaparse', { 'src/import/a.ts': "import 'papaparse';" }],
  ['door-re2js', { 'src/import/a.ts': "import 're2js';" }],
  ['door-yaml', { 'src/import/a.ts': "import 'yaml';" }],
  ['door-vega', { 'src/report/a.ts': "import 'vega';" }],
  ['door-vega-interpreter', { 'src/report/a.ts': "import 'vega-interpreter';" }],
  ['door-hyparquet', { 'src/import/a.ts': "import 'hyparquet';" }],
  ['door-hyparquet-writer', { 'src/report/a.ts': "import 'hyparquet-writer';" }],
  ['door-commander', { 'src/cli/a.ts': "import 'commander';" }],
  ['layer-web', { 'web/a.ts': "import '../src/timeline/b.ts';", 'src/timeline/b.ts': 'export {};' }],
  ['src-without-web', { 'src/report/a.ts': "import '../../web/b.ts';", 'web/b.ts': 'export {};' }],
  ['web-packages-only', { 'web/a.ts': "import 'papaparse';" }],
  ['web-without-node', { 'web/a.ts': "import 'node:fs';" }],
  ['web-door-vega', { 'web/a.ts': "import 'vega';" }],
  ['web-door-vega-embed', { 'web/components/a.ts': "import 'vega-embed';" }],
  ['web-door-vega-interpreter', { 'web/a.ts': "import 'vega-interpreter';" }],
  ['web-door-vega-lite', { 'web/views.ts': "import 'vega-lite';" }],
  ['web-door-fflate', { 'web/worker.ts': "import 'fflate';" }],
  ['web-door-hash-wasm', { 'web/worker.ts': "import 'hash-wasm';" }],
  ['node-in-cli-only', { 'src/import/a.ts': "import 'node:fs';" }],
  ['nothing-from-tests', { 'src/import/a.ts': "import 'fast-check';" }],
  ['no-cycles', { 'src/import/a.ts': "import './b.ts';", 'src/import/b.ts': "import './a.ts';" }],
  ['no-orphans', { 'src/import/a.ts': 'export {};' }],
  ['unresolved', { 'src/import/a.ts': "import './nowhere.ts';" }],
];
