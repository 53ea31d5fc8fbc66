import { readFileSync } from 'node:fs';

/** The layer rules of the project: who may import whom. DEVELOPERS.md says why. */

/** What each folder of src may import besides vocabulary.ts and itself. */
const mayImport = {
  import: [],
  statistics: [],
  charts: [],
  timeline: ['statistics'],
  analyze: ['timeline', 'statistics'],
  verify: ['timeline', 'statistics'],
  diagnose: ['timeline', 'statistics'],
  fleet: ['timeline', 'statistics'],
  report: ['charts'],
};

const reach = (name) => `(?:^|/)src/${name}${name.endsWith('$') ? '' : '/'}`;
const layerRules = Object.entries(mayImport).map(([folder, others]) => ({
  name: `layer-${folder}`,
  severity: 'error',
  from: { path: `(?:^|/)src/${folder}/` },
  to: {
    path: '(?:^|/)src/',
    pathNot: ['node_modules/', ...['vocabulary\\.ts$', folder, ...others].map(reach)],
  },
}));

/** The files a list imports, except the type of its members. */
function membersOf(folder, list, type) {
  const text = readFileSync(new URL(`src/${folder}/${list}.ts`, import.meta.url), 'utf8');
  const names = [...text.matchAll(/from '\.\/([\w-]+)\.ts'/g)].map(([, name]) => name);
  const members = names.filter((name) => name !== type);
  if (members.length === 0) throw new Error(`src/${folder}/${list}.ts imports no member.`);
  return members.join('|');
}

const lists = [
  ['import/layouts', 'importers', 'importer'],
  ['analyze', 'analyzers', 'analyzer'],
  ['verify', 'checks', 'check'],
  ['diagnose', 'causes', 'cause'],
];

/** Members of a list never import each other; only the list does. */
const siblingRules = [...lists, ['charts', 'charts', 'chart']].map(([folder, list, type]) => ({
  name: `siblings-${folder.split('/').at(-1)}`,
  severity: 'error',
  from: { path: `(?:^|/)src/${folder}/`, pathNot: `(?:^|/)src/${folder}/(?:${list})\\.ts$` },
  to: { path: `(?:^|/)src/${folder}/(?:${membersOf(folder, list, type)})\\.ts$` },
}));

/** Nobody outside the folder reaches past its list either. Charts are picked by name, for their row types. */
const listRules = lists.map(([folder, list, type]) => ({
  name: `list-${folder.split('/').at(-1)}`,
  severity: 'error',
  from: { path: '(?:^|/)src/', pathNot: `(?:^|/)src/${folder}/` },
  to: { path: `(?:^|/)src/${folder}/(?:${membersOf(folder, list, type)})\\.ts$` },
}));

/** One door per package of the core. */
const doors = [
  ['@stdlib', 'src/statistics/distributions\\.ts$'],
  ['arquero', 'src/fleet/tables\\.ts$'],
  ['papaparse', 'src/import/bytes/csv-rows\\.ts$'],
  ['@zip.js/zip.js', 'src/import/bytes/zip-members\\.ts$'],
  ['tinyglobby', 'src/cli/node-files\\.ts$'],
  ['temporal-polyfill', 'src/(?:import/clock/zones|report/words|report/staff-rows)\\.ts$'],
  [
    'valibot',
    'src/import/(?:job|phrasebook/(?:phrasebook-schema|yaml-file)|stored/stored-timeline-schema)\\.ts$',
  ],
  ['re2js', 'src/import/phrasebook/patterns\\.ts$'],
  ['yaml', 'src/import/phrasebook/yaml-file\\.ts$'],
  ['vega', 'src/report/(?:picture|vega-text-metrics\\.d)\\.ts$'],
  ['vega-lite', 'src/(?:report/picture|charts/[\\w-]+)\\.ts$'],
  ['vega-interpreter', 'src/report/picture\\.ts$'],
  ['hyparquet', 'src/import/stored/parquet-rows\\.ts$'],
  ['hyparquet-writer', 'src/report/timeline-parquet\\.ts$'],
  ['commander', 'src/cli/main\\.ts$'],
];

const doorRules = doors.map(([name, door]) => ({
  name: `door-${name}`,
  severity: 'error',
  from: { path: '(?:^|/)src/', pathNot: `(?:^|/)${door}` },
  to: { path: `node_modules/${name}/` },
}));

/** What the built files may hold: nothing without a door, and no test tool. Types of papaparse stand apart. */
const bundled = [...doors.map(([name]) => name), '@types/papaparse'];

/** One door per package in the page too; vega-lite is there for its types. */
const webDoors = [
  ['vega', 'web/render-chart\\.ts$'],
  ['vega-embed', 'web/render-chart\\.ts$'],
  ['vega-interpreter', 'web/render-chart\\.ts$'],
  ['vega-lite', 'web/(?:render-chart|with-brush|components/(?:chart|staff)-figure)\\.ts$'],
  ['hash-wasm', 'web/hasher\\.ts$'],
  ['fflate', 'web/browser-files\\.ts$'],
];

const webDoorRules = webDoors.map(([name, door]) => ({
  name: `web-door-${name}`,
  severity: 'error',
  from: { path: '(?:^|/)web/', pathNot: `(?:^|/)${door}` },
  to: { path: `node_modules/${name}/` },
}));

const webPackages = [...webDoors.map(([name]) => name), 'lit'];

/** The page stands on the same core as the command, by the same doors. */
const webRules = [
  {
    name: 'layer-web',
    severity: 'error',
    from: { path: '(?:^|/)web/' },
    to: {
      path: '(?:^|/)src/',
      pathNot: [
        '(?:^|/)src/(?:vocabulary|pipeline|import/phrasebook/phrasebook)\\.ts$',
        '(?:^|/)src/(?:report|charts)/',
      ],
    },
  },
  {
    name: 'src-without-web',
    severity: 'error',
    from: { path: '(?:^|/)src/' },
    to: { path: '(?:^|/)web/' },
  },
  {
    name: 'web-packages-only',
    severity: 'error',
    from: { path: '(?:^|/)web/' },
    to: { path: 'node_modules/', pathNot: `node_modules/(?:${webPackages.join('|')})/` },
  },
  {
    name: 'web-without-node',
    severity: 'error',
    from: { path: '(?:^|/)web/' },
    to: { dependencyTypes: ['core'] },
  },
  ...webDoorRules,
];

export default {
  forbidden: [
    ...layerRules,
    ...siblingRules,
    ...listRules,
    ...doorRules,
    ...webRules,
    {
      name: 'layer-vocabulary',
      severity: 'error',
      from: { path: '(?:^|/)src/vocabulary\\.ts$' },
      to: {},
    },
    {
      name: 'layer-cli',
      severity: 'error',
      from: { path: '(?:^|/)src/cli/' },
      to: {
        path: '(?:^|/)src/',
        pathNot: ['(?:^|/)src/(?:vocabulary|pipeline)\\.ts$', '(?:^|/)src/(?:report|cli)/'],
      },
    },
    {
      name: 'layer-pipeline',
      severity: 'error',
      from: { path: '(?:^|/)src/pipeline\\.ts$' },
      to: { path: '(?:^|/)src/(?:report|charts|cli)/' },
    },
    {
      name: 'bundled-packages-only',
      severity: 'error',
      from: { path: '(?:^|/)src/' },
      to: { path: 'node_modules/', pathNot: `node_modules/(?:${bundled.join('|')})/` },
    },
    {
      name: 'node-in-cli-only',
      severity: 'error',
      from: { path: '(?:^|/)src/', pathNot: '(?:^|/)src/cli/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'nothing-from-tests',
      severity: 'error',
      from: { path: '(?:^|/)(?:src|web)/' },
      to: {
        path: '(?:^|/)(?:tests|samples)/(?!architecture/broken)|node_modules/(?:vitest|fast-check|playwright-core|axe-core|html-validate|csv-spectrum)/',
      },
    },
    { name: 'no-cycles', severity: 'error', from: { path: '(?:^|/)(?:src|web)/' }, to: { circular: true } },
    {
      name: 'no-orphans',
      severity: 'error',
      from: { orphan: true, path: '(?:^|/)(?:src|web)/', pathNot: '\\.d\\.ts$|(?:^|/)src/vocabulary\\.ts$' },
      to: {},
    },
    { name: 'unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    parser: 'swc',
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      extensions: ['.ts', '.mjs', '.js', '.d.ts'],
    },
  },
};
