import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { gzipSync, strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';

const poll = [
  'time,unit,parameter,value',
  '2026-03-14T09:00:00Z,RO1,partner ready,yes',
  '2026-03-14T09:00:10Z,RO1,partner ready,no',
  '2026-03-14T09:00:20Z,RO1,partner ready,yes',
  '',
].join('\n');
const other = poll.replaceAll('RO1', 'RO2');

interface Inspected {
  readonly inputs: readonly {
    readonly file: string;
    readonly sha256: string;
    readonly bytes: number;
    readonly rows: { readonly read: number; readonly used: number };
    readonly container?: { readonly file: string; readonly sha256: string };
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
  test('in gzip is read as its one member', async () => {
    const packed = gzipSync(strToU8(poll));
    const path = fileWith(packed, 'poll.csv.gz');
    const [input] = (await inspect(path)).inputs;
    expect(input?.file).toBe(`${path}/poll.csv`);
    expect(input?.sha256).toBe(sha256(strToU8(poll)));
    expect(input?.bytes).toBe(poll.length);
    expect(input?.container).toEqual({ file: path, sha256: sha256(packed) });
    expect(input?.rows).toMatchObject({ read: 3, used: 3 });
  });

  test('in gzip of several parts put one after the other is read to its end', async () => {
    const parts = [poll.slice(0, 70), poll.slice(70)].map((part) => gzipSync(strToU8(part)));
    const path = fileWith(Buffer.concat(parts), 'poll.csv.gz');
    expect((await inspect(path)).inputs[0]?.sha256).toBe(sha256(strToU8(poll)));
  });

  test('in gzip of which nothing can be unpacked is called damaged, not empty', async () => {
    const packed = gzipSync(strToU8(poll));
    // The type of the first block, 3, is reserved. Source: RFC 1951 (1996), section 3.2.3; the header is 10 bytes, RFC 1952.
    const path = fileWith(Uint8Array.from([...packed.slice(0, 10), 0x07, ...packed.slice(11)]), 'bad.gz');
    const { status, err } = await steadypair('inspect', path);
    expect(status).toBe(2);
    expect(err).toContain('it cannot be read: The archive is damaged.');
  });

  test('in zip is read member by member, in the order of their names, packed or stored', async () => {
    const path = fileWith(
      zipSync({
        'week 2/b.csv': [strToU8(other), { level: 0 }],
        'a.csv': strToU8(poll),
        'week 2/c.csv.gz': gzipSync(strToU8(poll)),
        '.DS_Store': strToU8('x'),
        'report.html': strToU8('<p>x</p>'),
      }),
      'all.zip',
    );
    const { inputs, err } = await inspect(path);
    const names = ['a.csv', 'week 2/b.csv', 'week 2/c.csv.gz/c.csv'];
    expect(inputs.map((i) => i.file)).toEqual(names.map((name) => `${path}/${name}`));
    expect(inputs[1]?.sha256).toBe(sha256(strToU8(other)));
    expect(err).toBe('');
  });

  test('is told by its content, not by its name', async () => {
    expect((await inspect(fileWith(gzipSync(strToU8(poll)), 'poll.csv'))).inputs[0]?.rows.used).toBe(3);
    expect((await inspect(fileWith(poll, 'poll.gz'))).inputs[0]?.rows.used).toBe(3);
  });
});

describe('a damaged or hostile archive', () => {
  test('cut off in gzip is read as far as it goes, and says so', async () => {
    const rows = Array.from(
      { length: 5000 },
      (_, row) => `${new Date(row * 10_000).toISOString()},RO1,load,${(row * 7919) % 100}`,
    );
    const packed = gzipSync(strToU8(['time,unit,parameter,value', ...rows, ''].join('\n')));
    const { inputs, findings } = await inspect(
      fileWith(packed.subarray(0, packed.length / 2), 'poll.csv.gz'),
    );
    expect(inputs[0]?.rows.read).toBeGreaterThan(1000);
    expect(inputs[0]?.rows.read).toBeLessThan(4000);
    const tails = findings.filter((f) => f.id === 'damaged-tail').map((f) => f.statement);
    expect(tails.join('\n')).toContain('The archive is cut off or damaged: unpacked up to line');
  });

  test('cut off in zip has no directory: one line, and the rest is read', async () => {
    const whole = zipSync({ 'a.csv': strToU8(poll) });
    const path = fileWith(whole.subarray(0, whole.length - 30), 'cut.zip');
    const { inputs, err } = await inspect(path, fileWith(other));
    expect(inputs).toHaveLength(1);
    expect(err).toMatch(
      /^\S+cut\.zip: the archive is damaged or incomplete: .+\. Copy or pack it again\.\n$/,
    );
  });

  test('with a member that climbs out of its folder loses that member only', async () => {
    const path = fileWith(
      zipSync({ '../a.csv': strToU8(poll), 'b/../../c.csv': strToU8(poll), 'd.csv': strToU8(other) }),
      'climb.zip',
    );
    const { inputs, err } = await inspect(path);
    expect(inputs.map((i) => basename(i.file))).toEqual(['d.csv']);
    expect(err.trim().split('\n')).toHaveLength(2);
    expect(err).toContain('climb.zip/../a.csv: the path of this member leads out of the archive.');
  });

  test('with a member that unpacks to more than it says loses that member only', async () => {
    const bytes = zipSync({ 'big.csv': strToU8(poll.repeat(2000)), 'd.csv': strToU8(other) });
    const path = fileWith(withStatedSize(bytes, 'big.csv', 1024), 'lie.zip');
    const { inputs, err } = await inspect(path);
    expect(inputs.map((i) => basename(i.file))).toEqual(['d.csv']);
    expect(err).toContain('lie.zip/big.csv: its unpacked size differs from the size in the archive.');
  });

  test('that unpacks past any log is given up, and the rest is read', async () => {
    // 60 MB of blanks pack to about a thousandth; the limit is 16 MiB and 400 times the packed size.
    const packed = gzipSync(strToU8(`${poll}${' '.repeat(60_000_000)}`), { level: 9 });
    const path = fileWith(packed, 'bomb.csv.gz');
    const { inputs, err } = await inspect(path, fileWith(other));
    expect(inputs).toHaveLength(1);
    expect(err).toContain('bomb.csv.gz/bomb.csv: it unpacks to more than 400 times its packed size');
  });

  test('whose member names would steer a terminal does not', async () => {
    const name = 'a\u001b[31m\u202e\nb';
    const path = fileWith(zipSync({ [`${name}.csv`]: strToU8('x'), 'd.csv': strToU8(other) }), 'names.zip');
    const { out, err } = await steadypair('inspect', path);
    expect(err).toContain('names.zip/a‹001B›[31m‹202E›‹000A›b.csv:');
    for (const hidden of ['\u001b', '\u202e']) expect(out + err).not.toContain(hidden);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  test('within an archive is not unpacked', async () => {
    const inner = zipSync({ 'a.csv': strToU8(poll) });
    const path = fileWith(zipSync({ 'inner.zip': inner, 'd.csv': strToU8(other) }), 'outer.zip');
    const { inputs, err } = await inspect(path);
    expect(inputs.map((i) => basename(i.file))).toEqual(['d.csv']);
    expect(err).toContain('outer.zip/inner.zip: it is an archive within an archive. Unpack it first.');
  });

  test('without logs says so', async () => {
    const { status, err } = await steadypair(
      'inspect',
      fileWith(zipSync({ 'a.png': strToU8('x') }), 'x.zip'),
    );
    expect(status).toBe(2);
    expect(err).toContain('x.zip: the archive contains no logs. Pack the exports into it.');
  });
});

test('a pattern names the logs that fit it', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'steadypair-'));
  mkdirSync(join(folder, 'may'));
  for (const name of ['a-poll.csv', 'b-poll.csv', 'c.txt', 'may/d-poll.csv']) {
    writeFileSync(join(folder, name), poll);
  }
  const names = async (pattern: string): Promise<readonly string[]> =>
    (await inspect(join(folder, pattern))).inputs.map((i) => i.file.slice(folder.length + 1));
  expect(await names('*-poll.csv')).toEqual(['a-poll.csv', 'b-poll.csv']);
  expect(await names('**/*.csv')).toEqual(['a-poll.csv', 'b-poll.csv', 'may/d-poll.csv']);
  const { status, err } = await steadypair('inspect', join(folder, '*.log'));
  expect(status).toBe(2);
  expect(err).toContain('no log matches the pattern. Name the files, or another folder.');
});

/** The archive with another unpacked size in the directory entry of a member. APPNOTE.TXT 6.3.10 (2022), section 4.3.12. */
function withStatedSize(archive: Uint8Array, member: string, size: number): Uint8Array {
  const bytes = archive.slice();
  const view = new DataView(bytes.buffer);
  for (let at = 0; at + 46 < bytes.length; at += 1) {
    const isEntry = view.getUint32(at, true) === 0x02014b50;
    const name = isEntry ? bytes.subarray(at + 46, at + 46 + view.getUint16(at + 28, true)) : undefined;
    if (name !== undefined && new TextDecoder().decode(name) === member) view.setUint32(at + 24, size, true);
  }
  return bytes;
}
