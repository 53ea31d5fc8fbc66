import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { fileWith, steadypair } from '../../support/run-command.ts';
import { storeTimeline } from '../../support/store-timeline.ts';

const stories = ['clean-swap', 'bad-swap', 'wont-sync'] as const;
const folderOf = (story: string): string => `samples/marrow-bay/${story}`;
const phrases = ['--phrasebook', `${folderOf('clean-swap')}/phrasebook.yaml`];

/** A document of a command, and its inputs with their containers taken off. */
async function documentOf(...args: readonly string[]): Promise<{
  readonly rest: Readonly<Record<string, unknown>>;
  readonly inputs: readonly Readonly<Record<string, unknown>>[];
  readonly containers: readonly unknown[];
}> {
  const { out } = await steadypair(...args, '--json');
  const { inputs, ...rest } = JSON.parse(out);
  if (!Array.isArray(inputs)) throw new Error('no inputs');
  return {
    rest,
    inputs: inputs.map(({ container: _container, ...input }) => input),
    containers: inputs.map(({ container }) => container),
  };
}

describe('a Parquet timeline in place of the logs', () => {
  test.each(
    stories.flatMap((story) => ['verify', 'diagnose', 'timeline', 'inspect'].map((c) => [story, c] as const)),
  )('%s: %s prints the same JSON', async (story, command) => {
    const stored = await storeTimeline([folderOf(story)], ...phrases);
    const raw = await documentOf(command, folderOf(story), ...phrases);
    const read = await documentOf(command, stored);
    expect(read.rest).toEqual(raw.rest);
    expect(read.inputs).toEqual(raw.inputs);
    const sha256 = createHash('sha256').update(readFileSync(stored)).digest('hex');
    expect(read.containers).toEqual(raw.inputs.map(() => ({ file: stored, sha256 })));
  });
  test('three of them, one for each site, are as all logs together', async () => {
    const stored = await Promise.all(stories.map((story) => storeTimeline([folderOf(story)], ...phrases)));
    const raw = await documentOf('verify', ...stories.map(folderOf), ...phrases);
    const read = await documentOf('verify', ...stored);
    expect(read).toMatchObject({ rest: raw.rest, inputs: raw.inputs });
    expect(await documentOf('verify', ...(await Promise.all([storeTimeline(stored)])))).toMatchObject({
      rest: raw.rest,
      inputs: raw.inputs,
    });
  });
  test('mixed with logs, and with logs it holds already, it is as the logs alone', async () => {
    const [poll, journal] = ['poll.csv', 'journal.csv'].map(
      (name) => `${folderOf('clean-swap')}/ro1-${name}`,
    );
    const stored = await storeTimeline([poll ?? ''], ...phrases);
    const raw = await documentOf('verify', poll ?? '', journal ?? '', ...phrases);
    for (const paths of [
      [stored, journal ?? ''],
      [poll ?? '', journal ?? '', stored],
    ]) {
      const read = await documentOf('verify', ...paths, ...phrases);
      expect(read).toMatchObject({ rest: raw.rest, inputs: raw.inputs });
    }
  });
  test('it is a twentieth of the logs, the same bytes each time, and may be packed', async () => {
    const folder = folderOf('clean-swap');
    const [a, b] = [await storeTimeline([folder], ...phrases), await storeTimeline([folder], ...phrases)];
    expect(readFileSync(a)).toEqual(readFileSync(b));
    expect(statSync(a).size * 20).toBeLessThan(statSync(`${folder}/ro1-poll.csv`).size);
    const packed = fileWith(gzipSync(readFileSync(a)), 'site.parquet.gz');
    expect((await documentOf('verify', packed)).rest).toEqual((await documentOf('verify', a)).rest);
  });
  test('it goes on telling which log could not be read', async () => {
    const broken = fileWith('a,b\n1,2\n', 'broken.csv');
    const log = `${folderOf('clean-swap')}/ro1-events.log`;
    const raw = await documentOf('diagnose', log, broken, ...phrases);
    const read = await documentOf('diagnose', await storeTimeline([log, broken], ...phrases));
    expect(read.rest).toEqual(raw.rest);
    expect(JSON.stringify(read.rest)).toContain('broken.csv');
  });
});

describe('what can not be used', () => {
  const log = `${folderOf('bad-swap')}/ro3-events.log`;
  test('--format parquet wants a file', async () => {
    const { status, out, err } = await steadypair('timeline', log, '--format', 'parquet');
    expect([status, out]).toEqual([2, '']);
    expect(err).toBe('--format parquet: Parquet is binary and cannot be printed. Name a file with --out.\n');
  });
  test('cut off or damaged: one line, whatever byte it is', async () => {
    const whole = readFileSync(await storeTimeline([log]));
    const cut = [0.2, 0.5, 0.9, 0.99].map((part) => whole.subarray(0, Math.floor(whole.length * part)));
    const flipped = Array.from({ length: 60 }, (_, step) => {
      const bytes = Buffer.from(whole);
      const at = 8 + Math.floor(((whole.length - 16) * step) / 60);
      bytes[at] = (bytes[at] ?? 0) ^ 0xff;
      return bytes;
    });
    for (const bytes of [...cut, ...flipped]) {
      const path = fileWith(bytes, 'site.parquet');
      const { status, err } = await steadypair('verify', path);
      expect(status).toBe(2);
      expect(err.split('\n')[0]).toBe(
        `${path}: this Parquet file is damaged or cut off. Copy it again, or write the timeline again.`,
      );
    }
  });
  test('a text that begins with PAR1 stays a text', async () => {
    const path = fileWith(
      'PAR1 export\ntime,unit,parameter,value\n2026-03-14 10:00:00Z,PAR1,partner-ready,no\n',
    );
    const { out } = await steadypair('timeline', path, '--format', 'jsonl');
    expect(JSON.parse(out)).toMatchObject({ pair: 'PAR1', signal: 'partner-ready', value: 'no' });
  });
});
