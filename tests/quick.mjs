// `npm run quick [BASE]`: types, lint, layers, and the tests of what changed against BASE (main unless said), uncommitted
// changes included. It is the loop of daily work; `npm test` is what counts.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { counts, slowest, step, suite } from './steps.mjs';

const [base = 'main'] = process.argv.slice(2);
const begin = Date.now();

function git(...args) {
  const { status, stdout, stderr } = spawnSync('git', args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr.trim());
  return stdout.split('\n').filter((line) => line !== '');
}

/** What runs for seconds by itself; `npm test` runs it. */
const long = [
  'tests/behaviour/cli/damaged-files.test.ts',
  'tests/behaviour/cli/faults.test.ts',
  'tests/behaviour/cli/memory.test.ts',
];

/** What else rests on a folder of src, beside the reports that the golden files hold. */
const restsOn = {
  timeline: ['tests/behaviour/analyze/', 'tests/behaviour/verify/', 'tests/behaviour/diagnose/'],
  statistics: ['tests/published/', 'tests/property/statistics'],
};

/** Test files or folders for a changed file: its mirror, and what shows the change to a user. */
function testsOf(file) {
  if (/^tests\/.*\.test\.ts$/.test(file)) return [file];
  const [top, folder] = file.split('/');
  if (top === 'src' && file.split('/').length === 2)
    return ['tests/golden/', 'tests/behaviour/cli/commands.test.ts'];
  if (top === 'src')
    return [
      `tests/behaviour/${folder}/`,
      ...(restsOn[folder] ?? []),
      'tests/golden/',
      'tests/architecture/lists.test.ts',
    ];
  if (top === 'web') return ['tests/behaviour/web/', 'tests/browser/page.test.ts'];
  if (top === 'samples') return ['tests/behaviour/samples/', 'tests/golden/'];
  if (top === 'tests' && folder === 'support') return ['tests/behaviour/verify/', 'tests/behaviour/analyze/'];
  return top === 'tests' ? [`tests/${folder}/`] : ['tests/architecture/sources.test.ts'];
}

/** The test files below some paths, each once, without the long ones that nobody named. */
function filesOf(paths) {
  const all = readdirSync('tests', { recursive: true })
    .map((name) => `tests/${name}`)
    .filter((name) => name.endsWith('.test.ts'));
  return all.filter(
    (file) => paths.includes(file) || (!long.includes(file) && paths.some((p) => file.startsWith(p))),
  );
}

const changed = [
  ...new Set([...git('diff', '--name-only', base), ...git('ls-files', '--others', '--exclude-standard')]),
];
const tests = filesOf([
  ...new Set(changed.filter((f) => existsSync(f) || f.startsWith('src/')).flatMap(testsOf)),
]);

mkdirSync('out', { recursive: true });
step('types', 'npm', ['run', '--silent', 'types']);
step('lint and format', 'npm', ['run', '--silent', 'lint']);
step('layers', 'npm', ['run', '--silent', 'layers']);
if (changed.some((f) => f.startsWith('web/'))) step('build', 'npm', ['run', '--silent', 'build']);
if (tests.length > 0) suite('UTC', tests);

for (const { name, seconds } of slowest(3)) console.log(`${seconds.toFixed(1).padStart(7)} s  ${name}`);
const { passed, failed } = counts();
console.log(
  `\n${changed.length} files changed against ${base}, ${tests.length} test files, ${((Date.now() - begin) / 1000).toFixed(1)} s`,
);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
