import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { gzipSync, strToU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';

const poll = [
  'time,unit,parameter,value',
  '2026-03-14T09:00:00Z,RO1,partner ready,yes',
  '2026-03-14T09:00:10Z,RO1,partner ready,no',
  '2026-03-14T09:00:20Z,RO1,partner ready,yes',
  '',
].join('\n');

interface Inspected {
  readonly inputs: readonly {
    readonly sha256: string;
    readonly rows: { readonly read: number; readonly used: number };
  }[];
  readonly findings: readonly { readonly id: string; readonly statement: string }[];
}

async function inspect(...paths: readonly string[]): Promise<Inspected & { readonly err: string }> {
  const { out, err } = await steadypair('inspect', ...paths, '--json');
  const found: Inspected = JSON.parse(out);
  return { ...found, err };
}

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

describe('an archive', () => {
  test.each([
    ['gztrail', 'Other bytes follow the end of the archive'],
    ['gzcrc', 'The checksum or length of the archive is wrong'],
  ])('in gzip whose trailer is not right is used, and told of: %s', async (name, what) => {
    const path = join('tests', 'fixtures', 'faults', '09-gzip-trailer', `${name}.csv.gz`);
    const { inputs, findings, err } = await inspect(path);
    // The journal has a header and 34 rows.
    expect(inputs[0]?.rows).toMatchObject({ read: 34, used: 34 });
    const tails = findings.filter((f) => f.id === 'damaged-tail').map((f) => f.statement);
    expect(tails).toEqual([expect.stringContaining(`${what}: unpacked up to line 35.`)]);
    expect(err).toBe('');
  });

  test('in gzip is the same with every part a header may have, in several members, and with zeros at its end', async () => {
    const [header, body] = [gzipSync(strToU8(poll)).slice(0, 10), gzipSync(strToU8(poll)).slice(10)];
    // Extra field, name, comment and check sum of the header. Source: RFC 1952 (1996), section 2.3.1.
    const whole = Uint8Array.from([
      ...header.slice(0, 3),
      2 + 4 + 8 + 16,
      ...header.slice(4),
      ...[3, 0, 1, 2, 3],
      ...strToU8('poll.csv\0'),
      ...strToU8('of a station\0'),
      ...[9, 9],
      ...body,
    ]);
    const twice = Buffer.concat([whole, gzipSync(new Uint8Array(0)), whole, new Uint8Array(40_000)]);
    const { inputs, findings } = await inspect(fileWith(twice, 'poll.csv.gz'));
    expect(inputs[0]?.sha256).toBe(sha256(strToU8(poll + poll)));
    expect(findings.filter((f) => f.id === 'damaged-tail')).toEqual([]);
  });

  test('in gzip is used up to where it is cut, wherever that is', async () => {
    const packed = gzipSync(strToU8(poll));
    // The header has 10 bytes, the trailer 8.
    for (const length of [packed.length - 1, packed.length - 8, packed.length - 9]) {
      const path = fileWith(packed.slice(0, length), 'poll.csv.gz');
      const { inputs, findings } = await inspect(path);
      expect(inputs[0]?.rows.used).toBeGreaterThanOrEqual(2);
      expect(findings.filter((f) => f.id === 'damaged-tail').length).toBeGreaterThanOrEqual(1);
    }
  });
});

test('a gzip within a gzip is one line', async () => {
  const path = fileWith(gzipSync(gzipSync(strToU8(poll))), 'poll.csv.gz.gz');
  const { status, err } = await steadypair('inspect', path);
  expect([status, err.split('\n')[0]]).toEqual([
    2,
    `${path}/poll.csv.gz: it is an archive within an archive. Unpack it first.`,
  ]);
});
