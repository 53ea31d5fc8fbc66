import { readFileSync } from 'node:fs';

/** The layer rules of the project: who may import whom. DEVELOPERS.md says why. */

/** What each folder of src may import besides vocabulary.ts, the columns of changes and itself; a room never a room that stands below it here. */
const mayImport = {
  import: [],
  statistics: [],
  charts: [],
  timeline: ['statistics'],
  analyze: ['timeline', 'statistics'],
  procedure: ['timeline', 'statistics'],
  verify: ['procedure', 'timeline', 'statistics'],
  diagnose: ['timeline', 'statistics'],
  fleet: ['timeline', 'statistics'],
  report: ['charts'],
  bundle: ['pipeline\\.ts$', 'report', 'import/bytes', 'import/phrasebook'],
  ...roomsOf('import', {
    bytes: [],
    clock: ['bytes'],
    phrasebook: ['bytes', 'clock'],
    changes: ['bytes', 'clock', 'phrasebook'],
    layouts: ['bytes', 'clock', 'phrasebook', 'changes'],
    drafts: ['bytes', 'clock', 'phrasebook', 'changes', 'layouts'],
    'row-cache': ['bytes', 'clock', 'changes'],
    stored: ['bytes', 'changes'],
  }),
};

/** The rooms of a folder: its files at the top drive all of them, a room imports only rooms that come before it. */
function roomsOf(folder, rooms) {
  const order = Object.keys(rooms);
  for (const [place, room] of order.entries())
    for (const other of rooms[room])
      if (!order.slice(0, place).includes(other)) throw new Error(`${room} comes before ${other}.`);
  const within = (name) => `${folder}/${name}`;
  return Object.fromEntries(order.map((room) => [within(room), rooms[room].map(within)]));
}

const reach = (name) => `(?:^|/)src/${name}${name === '' || name.endsWith('$') ? '' : '/'}`;
const layerRules = Object.entries(mayImport).map(([folder, others]) => ({
  name: `layer-${folder}`,
  severity: 'error',
  from: { path: reach(folder) },
  to: {
    path: reach(''),
    pathNot: [
      'node_modules/',
      ...['vocabulary\\.ts$', 'change(?:s|-columns)\\.ts$', folder, ...others].map(reach),
    ],
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

const roomIn = (folder) => folder.split('/').at(-1);

/** Members of a list never import each other; only the list does. */
const siblingRules = [...lists, ['charts', 'charts', 'chart']].map(([folder, list, type]) => ({
  name: `siblings-${roomIn(folder)}`,
  severity: 'error',
  from: { path: reach(folder), pathNot: reach(`${folder}/${list}\\.ts$`) },
  to: { path: reach(`${folder}/(?:${membersOf(folder, list, type)})\\.ts$`) },
}));

/** Nobody outside the folder reaches past its list either. Charts are picked by name, for their row types. */
const listRules = lists.map(([folder, list, type]) => ({
  name: `list-${roomIn(folder)}`,
  severity: 'error',
  from: { path: reach(''), pathNot: reach(folder) },
  to: { path: reach(`${folder}/(?:${membersOf(folder, list, type)})\\.ts$`) },
}));

/** Rules that let one file of a side import a package. */
function doorRules(prefix, side, packages) {
  return packages.map(([name, door]) => ({
    name: `${prefix}${name}`,
    severity: 'error',
    from: { path: `(?:^|/)${side}/`, pathNot: `(?:^|/)${door}` },
    to: { path: `node_modules/${name}/` },
  }));
}

/** One door per package of the core. */
const doors = [
  ['@stdlib', 'src/statistics/distributions\\.ts$'],
  ['arquero', 'src/fleet/tables\\.ts$'],
  ['papaparse', 'src/import/bytes/csv-rows\\.ts$'],
  ['@zip.js/zip.js', 'src/import/bytes/zip-members\\.ts$'],
  ['fflate', 'src/bundle/write-zip\\.ts$'],
  ['tinyglobby', 'src/cli/find-files\\.ts$'],
  [
    'temporal-polyfill',
    'src/(?:import/clock/zones|timeline/site-clock|report/words|report/staff-rows)\\.ts$',
  ],
  [
    'valibot',
    'src/import/(?:job|bytes/bundle-schema|phrasebook/(?:phrasebook-schema|yaml-file)|stored/(?:stored-timeline|figures)-schema)\\.ts$',
  ],
  ['re2js', 'src/import/phrasebook/patterns\\.ts$'],
  ['yaml', 'src/import/phrasebook/yaml-file\\.ts$'],
  ['vega', 'src/report/(?:picture|vega-text-metrics\\.d)\\.ts$'],
  ['vega-lite', 'src/(?:report/picture|charts/[\\w-]+)\\.ts$'],
  ['vega-interpreter', 'src/report/picture\\.ts$'],
  ['hyparquet', 'src/import/stored/parquet-rows\\.ts$'],
  ['hyparquet-writer', 'src/report/parquet-file\\.ts$'],
  ['commander', 'src/cli/(?:main|cli-command|options)\\.ts$'],
];

/** What the built files may hold: nothing without a door, and no test tool. Types of papaparse stand apart. */
const bundled = [...doors.map(([name]) => name), '@types/papaparse'];

/** One door per package in the page too; vega-lite is there for its types. */
const webDoors = [
  ['vega', 'web/render-chart\\.ts$'],
  ['vega-embed', 'web/render-chart\\.ts$'],
  ['vega-interpreter', 'web/render-chart\\.ts$'],
  ['vega-lite', 'web/(?:render-chart|staff-drawing|fitted|components/chart-figure)\\.ts$'],
  ['hash-wasm', 'web/hasher\\.ts$'],
  ['fflate', 'web/(?:gunzip|zip-files)\\.ts$'],
];

const webPackages = [...webDoors.map(([name]) => name), 'lit'];

const rule = (name, from, to) => ({ name, severity: 'error', from, to });

/**
 * The page stands on the same core as the command, by the same doors. A clock ticks in the page itself: of the pipeline its window
 * would hold all that its worker has already.
 */
const webRules = [
  {
    name: 'layer-web',
    severity: 'error',
    from: { path: '(?:^|/)web/' },
    to: {
      path: '(?:^|/)src/',
      pathNot: [
        '(?:^|/)src/(?:vocabulary|pipeline|import/phrasebook/phrasebook|procedure/running-clock)\\.ts$',
        '(?:^|/)src/(?:report|charts|bundle)/',
      ],
    },
  },
  rule('src-without-web', { path: '(?:^|/)src/' }, { path: '(?:^|/)web/' }),
  rule(
    'web-packages-only',
    { path: '(?:^|/)web/' },
    { path: 'node_modules/', pathNot: `node_modules/(?:${webPackages.join('|')})/` },
  ),
  rule('web-without-node', { path: '(?:^|/)web/' }, { dependencyTypes: ['core'] }),
  ...doorRules('web-door-', 'web', webDoors),
];

export default {
  forbidden: [
    ...layerRules,
    ...siblingRules,
    ...listRules,
    ...doorRules('door-', 'src', doors),
    ...webRules,
    rule('layer-vocabulary', { path: '(?:^|/)src/vocabulary\\.ts$' }, {}),
    {
      name: 'layer-cli',
      severity: 'error',
      from: { path: '(?:^|/)src/cli/' },
      to: {
        path: '(?:^|/)src/',
        pathNot: ['(?:^|/)src/(?:vocabulary|pipeline)\\.ts$', '(?:^|/)src/(?:report|bundle|cli)/'],
      },
    },
    rule(
      'layer-pipeline',
      { path: '(?:^|/)src/(?:pipeline|limits)\\.ts$' },
      { path: '(?:^|/)src/(?:report|charts|bundle|cli)/' },
    ),
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
