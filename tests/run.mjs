// `npm test`: every step counts as one check, every test of the suite as one; closes with "N passed, N failed".
import { mkdirSync } from 'node:fs';
import { counts, slowest, step, suite } from './steps.mjs';

mkdirSync('out', { recursive: true });
step('types', 'npm', ['run', '--silent', 'types']);
step('lint and format', 'npm', ['run', '--silent', 'lint']);
step('layers', 'npm', ['run', '--silent', 'layers']);
step('unused code', 'npm', ['run', '--silent', 'unused']);
step('build', 'npm', ['run', 'build']);
suite('UTC', []);
// Where stamps are read, instants are said or drawn, or the zone of this computer could slip in otherwise.
suite('Pacific/Auckland', [
  'tests/support/zone.test.ts',
  'tests/behaviour/import/changes/',
  'tests/behaviour/import/clock/',
  'tests/behaviour/import/drafts/',
  'tests/behaviour/import/layouts/',
  'tests/behaviour/import/stored/',
  'tests/behaviour/timeline/',
  'tests/behaviour/charts/',
  'tests/behaviour/report/',
  'tests/behaviour/samples/',
  'tests/behaviour/cli/commands.test.ts',
  'tests/behaviour/cli/inspect.test.ts',
  'tests/behaviour/cli/stored-timelines.test.ts',
  'tests/golden/',
  'tests/property/export-combinations.test.ts',
  'tests/published/iana-time-zones.test.ts',
  'tests/published/rfc3339.test.ts',
  'tests/published/syslog.test.ts',
  'tests/published/syslog-vectors.test.ts',
]);

console.log('\nthe slowest ten suites');
for (const { name, seconds } of slowest(10)) console.log(`${seconds.toFixed(1).padStart(7)} s  ${name}`);
const { passed, failed } = counts();
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
