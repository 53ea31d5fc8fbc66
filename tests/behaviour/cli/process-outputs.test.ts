import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fileWith } from '../../support/run-command.ts';

const command = resolve('dist', 'steadypair.mjs');
const log = fileWith('2026-03-14T10:00:00Z RO1-A partner ready\n', 'x.log');
const full = 'the output: the disk is full. Free some space and try again.\n';

function bash(script: string): {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
} {
  const { status, stdout, stderr } = spawnSync('bash', ['-c', script, process.execPath, command, log], {
    encoding: 'utf8',
  });
  return { status, out: stdout, err: stderr };
}

describe('an output that takes nothing', () => {
  test.each(['timeline "$2"', '--help'])('is one line and status 2: %s', (asked) => {
    expect(bash(`"$0" "$1" ${asked} > /dev/full`)).toEqual({ status: 2, out: '', err: full });
  });

  test('changes no status where it is the one for errors', () => {
    expect(bash('"$0" "$1" inspect no-such.log 2> /dev/full').status).toBe(2);
    expect(bash('"$0" "$1" timeline "$2" no-such.log 2> /dev/full').status).toBe(0);
  });
});

test('an output that is full half-way is one line and status 2', () => {
  const out = join(dirname(log), 'half.json');
  // A kilobyte is all that a file may have; what goes beyond is refused instead of ending the program.
  const { status, err } = bash(`trap '' XFSZ; ulimit -f 1; "$0" "$1" timeline "$2" --json > "${out}"`);
  expect([status, err]).toEqual([
    2,
    'the output: it would be larger than the file system allows. Choose another place.\n',
  ]);
  expect(statSync(out).size).toBe(1024);
});

test('a reader that closes early is no fault', () => {
  const { status, out, err } = bash('set -o pipefail; "$0" "$1" timeline "$2" | head -1');
  expect([status, err]).toEqual([0, '']);
  expect(out).toBe('time,earliest,pair,half,signal,value,before,concluded,sources\r\n');
});
