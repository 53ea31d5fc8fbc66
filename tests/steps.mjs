// What `npm test` and `npm run quick` run their steps with, and what came of them.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';

const suites = [];
let passed = 0;
let failed = 0;

/** Runs a command; it counts as one check. */
export function step(title, command, args, env = {}) {
  const begin = Date.now();
  const { status } = spawnSync(command, args, { stdio: 'inherit', env: { ...process.env, ...env } });
  const good = status === 0;
  if (good) passed += 1;
  else failed += 1;
  console.log(`${good ? 'passed' : 'FAILED'}  ${title}  (${((Date.now() - begin) / 1000).toFixed(1)} s)`);
}

/** Runs the test files whose paths hold one of `args`, or all, in a time zone: nothing may depend on the computer's. */
export function suite(zone, args) {
  const title = `tests, zone ${zone}`;
  const results = join('out', `tests-${zone.replace('/', '-')}.json`);
  rmSync(results, { force: true });
  step(
    title,
    join('node_modules', '.bin', 'vitest'),
    ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${results}`, ...args],
    { TZ: zone },
  );
  if (!existsSync(results)) {
    console.log(`FAILED  ${title}: no results were written`);
    failed += 1;
    return;
  }
  const { numTotalTests, numPassedTests, testResults } = JSON.parse(readFileSync(results, 'utf8'));
  passed += numPassedTests;
  // A test that was skipped proves nothing: it counts as failed.
  failed += numTotalTests - numPassedTests;
  for (const { name, startTime, endTime } of testResults)
    suites.push({ name: `${relative('.', name)} (${zone})`, seconds: (endTime - startTime) / 1000 });
}

/** The test files that took longest, the longest first. */
export function slowest(count) {
  return suites.toSorted((a, b) => b.seconds - a.seconds).slice(0, count);
}

/** How many checks and tests passed and failed so far. */
export function counts() {
  return { passed, failed };
}
