// `npm test`: every step counts as one check, every test of the suite as one; closes with "N passed, N failed".
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';

const bin = (name) => join('node_modules', '.bin', name);
let passed = 0;
let failed = 0;

function step(title, command, args, env = {}) {
  const begin = Date.now();
  const { status } = spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, ...env } });
  const good = status === 0;
  if (good) passed += 1;
  else failed += 1;
  console.log(`${good ? 'passed' : 'FAILED'}  ${title}  (${((Date.now() - begin) / 1000).toFixed(1)} s)`);
  return good;
}

/** Runs the suite in a time zone: nothing may depend on the computer's. */
function suite(zone, args) {
  const results = join('out', `tests-${zone.replace('/', '-')}.json`);
  rmSync(results, { force: true });
  step(
    `tests, zone ${zone}`,
    bin('vitest'),
    ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${results}`, ...args],
    { TZ: zone },
  );
  if (!existsSync(results)) {
    console.log(`FAILED  tests, zone ${zone}: no results were written`);
    failed += 1;
    return;
  }
  const { numTotalTests, numPassedTests } = JSON.parse(readFileSync(results, 'utf8'));
  passed += numPassedTests;
  // A test that was skipped proves nothing: it counts as failed.
  failed += numTotalTests - numPassedTests;
}

mkdirSync('out', { recursive: true });
step('types', 'npm', ['run', '--silent', 'types']);
step('lint and format', 'npm', ['run', '--silent', 'lint']);
step('layers', 'npm', ['run', '--silent', 'layers']);
step('unused code', 'npm', ['run', '--silent', 'unused']);
step('build', 'npm', ['run', 'build']);
suite('UTC', []);
// What draws pages, runs other tools, fills disks or throws anything at the importers does not depend on the zone in a second way:
// once is enough.
suite('Pacific/Auckland', [
  '--exclude=tests/browser/**',
  '--exclude=tests/architecture/**',
  '--exclude=tests/fuzz/**',
  '--exclude=tests/bench/**',
  '--exclude=tests/behaviour/cli/faults.test.ts',
  '--exclude=tests/property/two-lanes.test.ts',
  '--exclude=tests/property/dense-logs.test.ts',
  '--exclude=tests/hostile/long-runs.test.ts',
]);

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
