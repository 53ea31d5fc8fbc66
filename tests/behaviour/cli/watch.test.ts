import {
  appendFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Happening, partsOf, settingsOf, watchGrowing } from '../../support/growing-watch.ts';
import { steadypair } from '../../support/run-command.ts';

const clean = partsOf('clean-swap', ['09:13:00', '09:15:00', '09:20:00', '09:25:00', '09:45:00', '09:55:00']);
const inThree = partsOf('clean-swap', ['09:13:00', '09:25:00']);
const bad = partsOf('bad-swap', ['13:30:00', '13:33:30', '13:40:00', '13:45:00', '13:55:00']);
const cautions = 'Replacing a module on a running process can upset it.';

const quiet: Happening = () => Date.UTC(2026, 2, 14, 10, 40);
const lastLine = (text: string): string => text.trimEnd().split('\n').at(-1) ?? '';

describe('the replay of a swap', () => {
  test('ends with the soak, with the status and the sentence of verify, and leaves its reports', async () => {
    const out = mkdtempSync(join(tmpdir(), 'kept-'));
    const { status, out: said, folder } = await watchGrowing(inThree, { ...settingsOf('clean-swap'), out });
    const { phrasebook = '', job = '' } = settingsOf('clean-swap');
    const other = mkdtempSync(join(tmpdir(), 'verified-'));
    const verified = await steadypair(
      'verify',
      folder,
      '--phrasebook',
      phrasebook,
      '--job',
      job,
      '--out',
      other,
    );
    expect([status, verified.status]).toEqual([0, 0]);
    expect(lastLine(said)).toBe(
      'Pair RO1 is verified: halves B and A were replaced and it came back redundant.',
    );
    expect(verified.out).toContain(lastLine(said));
    expect(readdirSync(out).sort()).toEqual(readdirSync(other).sort());
    for (const name of readdirSync(other))
      expect(readFileSync(join(out, name), 'utf8')).toBe(readFileSync(join(other, name), 'utf8'));
  });

  test('of the bad one ends with 1', async () => {
    const { status, out } = await watchGrowing(bad, settingsOf('bad-swap'));
    expect(status).toBe(1);
    expect(out).toContain('Pair RO3 is not verified: half B was replaced, but 3 of 16 checks failed');
  });

  test('is a line per change where there is no terminal, after the cautions', async () => {
    const { out } = await watchGrowing(clean, settingsOf('clean-swap'));
    const lines = out.split('\n');
    expect(lines[0]).toContain(cautions);
    expect(lines[1]).toBe('No pair in work: waiting for the first removal. Pairs: RO1.');
    expect(lines[2]).toMatch(
      /^14 Mar 2026 09:14:5\d {2}RO1: Waiting for a module in half B, the limit is 15 min 00 s\. Hold/,
    );
    expect(out).toContain('RO1: Waiting for half B to be ready');
    expect(out).toContain('The swap is over: verified');
    expect(out).not.toContain('\u001b');
    expect(out).not.toContain('\u0007');
  });

  test('is a document a line with --json, and nothing else', async () => {
    const { out, status } = await watchGrowing(clean, { ...settingsOf('clean-swap'), json: true });
    const documents = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(status).toBe(0);
    for (const document of documents) expect(document.schema).toBe('steadypair/watch/1');
    expect(documents[0]).toMatchObject({
      pair: 'RO1',
      awaits: 'in',
      since: { time: '2026-03-14T09:14:05.212Z', earliest: '2026-03-14T09:14:05.212Z' },
      limitSeconds: 900,
      holdPoint: 'waiting',
      verdict: 'inconclusive',
    });
    expect(documents[0].halves[1]).toMatchObject({ half: 'B', isOut: true });
    expect(documents.at(-1)).toMatchObject({ awaits: null, holdPoint: 'met', verdict: 'verified' });
  });
});

describe('what is not there yet', () => {
  test('waits for the first log, and for a pair that no log names', async () => {
    const [history] = clean;
    if (history === undefined) throw new Error('no part');
    const run = await watchGrowing([() => 0, history], { ...settingsOf('clean-swap'), pair: 'RO9' });
    expect(run.out.split('\n').slice(1, 3)).toEqual([
      `Waiting for the first log in ${run.folder}.`,
      'Waiting for pair RO9: no log names it yet. Pairs: RO1.',
    ]);
    expect(run.err).not.toContain('the folder contains no logs');
    expect(run.status).toBe(3);
    expect(run.out).toContain('No swap found');
  });

  test('a file of too few lines to be recognised is read again as it grows, and refused at the end', async () => {
    const [history] = clean;
    if (history === undefined) throw new Error('no part');
    const young: Happening = (folder) => {
      appendFileSync(join(folder, 'odd.txt'), 'nothing that begins with a clock\n');
      return history(folder);
    };
    const { err, folder } = await watchGrowing([young], settingsOf('clean-swap'));
    const lines = err.split('\n').filter((line) => line.startsWith(join(folder, 'odd.txt')));
    expect(lines[0]).toBe(`${join(folder, 'odd.txt')}: not recognised yet; it is read again as it grows.`);
    expect(lines[1]).toContain('the layout is not known');
  });

  test('logs that vanish for a while are told of, and what they said stays', async () => {
    const [history, removal] = [clean[0], clean[1]];
    if (history === undefined || removal === undefined) throw new Error('no part');
    const aside = join(mkdtempSync(join(tmpdir(), 'aside-')), 'logs');
    const gone: Happening = (folder) => {
      renameSync(folder, aside);
      return Date.UTC(2026, 2, 14, 9, 16);
    };
    const back: Happening = (folder) => {
      renameSync(aside, folder);
      return Date.UTC(2026, 2, 14, 9, 17);
    };
    const { out, err, folder, status } = await watchGrowing(
      [history, removal, gone, back],
      settingsOf('clean-swap'),
    );
    expect(err).toContain(
      `${folder}: it cannot be reached now; what was read of it stays, and it is tried again.`,
    );
    expect(out).not.toContain('Waiting for the first log');
    expect(out.split('RO1: Waiting for').length - 1).toBe(1);
    expect(status).toBe(3);
  });

  test('a name that leads nowhere is refused at once', async () => {
    const { status, err } = await steadypair('watch', '/nowhere/at-all');
    expect([status, err]).toEqual([2, '/nowhere/at-all: there is no such file or folder. Check the name.\n']);
  });

  test('the pair that is named is shown before its first removal', async () => {
    const [history] = clean;
    if (history === undefined) throw new Error('no part');
    const { out } = await watchGrowing([history, quiet], { ...settingsOf('clean-swap'), pair: 'ro1' });
    expect(out).toContain('RO1: Waiting for the first removal. Hold point before removal of half B: met.');
  });
});

describe('the end', () => {
  test('does not come with a swap that was over before; an interrupt has the status of its verdict', async () => {
    const whole = partsOf('clean-swap', []);
    const { status, out } = await watchGrowing([...whole, quiet, quiet], settingsOf('clean-swap'));
    expect(status).toBe(0);
    expect(out).toContain('The swap is over: verified');
  });

  test('by an interrupt in the middle of a swap is inconclusive, with what is waited for', async () => {
    const { status, out } = await watchGrowing(clean.slice(0, 3), settingsOf('clean-swap'));
    expect(status).toBe(3);
    expect(out).toContain('The swap of pair RO1 is still open: half B was replaced.');
    expect(lastLine(out)).toMatch(/^Waiting since 09:1\d:\d\d.*the limit is 09:\d\d:\d\d\.$/);
  });
});

test('a report that cannot be written is told once and tried again, also where nothing changes', async () => {
  const out = join(mkdtempSync(join(tmpdir(), 'place-')), 'reports');
  writeFileSync(out, 'in the way');
  const [history, removal] = [clean[0], clean[1]];
  if (history === undefined || removal === undefined) throw new Error('no part');
  let moment = 0;
  const begun: Happening = (folder) => {
    moment = removal(folder);
    return moment;
  };
  const later = (seconds: number, act = (): void => undefined): Happening => {
    return () => {
      act();
      return moment + seconds * 1000;
    };
  };
  let kept: readonly string[] = [];
  const parts = [
    history,
    begun,
    later(1),
    later(4),
    later(8, () => rmSync(out)),
    later(12, () => {
      kept = readdirSync(out).sort();
    }),
  ];
  const run = await watchGrowing(parts, { ...settingsOf('clean-swap'), out });
  expect(run.err.split('\n').filter((line) => line.startsWith(out))).toEqual([
    `${join(out, 'RO1-swap-2026-03-14.html')}: part of its path is not a folder. Check the name. The watch goes on and tries again.`,
  ]);
  expect(kept).toEqual(['RO1-swap-2026-03-14.html', 'RO1-swap-2026-03-14.md', 'verify.json']);
  expect(run.status).toBe(3);
  expect(run.out).toContain(`Report: ${join(out, 'verify.json')}`);
});
