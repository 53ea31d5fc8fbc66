import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { newFolder, story } from '../../support/demo-story.ts';
import { steadypair } from '../../support/run-command.ts';
import { membersOf, zipWith } from '../../support/zip-members.ts';

let good: ReadonlyMap<string, Uint8Array>;
beforeAll(async () => {
  const zip = join(newFolder(), 'good.zip');
  await steadypair('verify', ...story('clean-swap').args, '--bundle', zip);
  good = await membersOf(readFileSync(zip));
});

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The good bundle with some members otherwise; `null` takes one away. */
async function tampered(
  changes: Readonly<Record<string, string | Uint8Array | null>>,
  manifest: (said: Record<string, unknown>) => unknown = (said) => said,
): Promise<string> {
  const members = new Map<string, Uint8Array | string>(good);
  for (const [name, content] of Object.entries(changes)) {
    if (content === null) members.delete(name);
    else members.set(name, content);
  }
  const said = JSON.parse(new TextDecoder().decode(good.get('manifest.json')));
  members.set('manifest.json', JSON.stringify(manifest(said)));
  const path = join(newFolder(), 'bad.zip');
  writeFileSync(path, await zipWith(members));
  return path;
}

/** A manifest that lists a member as it is now. */
function relisted(name: string, content: string): (said: Record<string, unknown>) => unknown {
  const sha256 = createHash('sha256').update(content).digest('hex');
  return ({ members, ...rest }) => ({
    ...rest,
    members: Array.isArray(members)
      ? [...members.filter((m) => m.name !== name), { name, bytes: content.length, sha256 }]
      : [],
  });
}

describe('a bundle that is not as it was', () => {
  test('the good one is verified', async () => {
    const { status, err } = await steadypair('verify', await tampered({}));
    expect([status, err]).toEqual([0, '']);
  });

  test.each([
    [
      'a log was changed',
      'logs/ro1-notes.txt',
      '09:00 nothing',
      'its content is not what the manifest lists: SHA-256 differs.',
    ],
    ['a log is missing', 'logs/ro1-events.log', null, 'it is listed in the manifest and is not there.'],
    [
      'the job was changed',
      'job.yaml',
      'workOrder: other',
      'its content is not what the manifest lists: SHA-256 differs.',
    ],
    [
      'the settings were changed',
      'settings.json',
      '{}',
      'its content is not what the manifest lists: SHA-256 differs.',
    ],
    [
      'a log was added',
      'logs/more.log',
      '2026-03-14T09:00:00Z RO1-A role active\n',
      'the manifest does not list it.',
    ],
  ])('%s: one line, and no verdict "verified"', async (_, name, content, says) => {
    const { status, err, out } = await steadypair('verify', await tampered({ [name]: content }), '--json');
    const lines = err
      .trimEnd()
      .split('\n')
      .filter((line) => line.includes(name));
    expect(lines).toEqual([expect.stringContaining(`bad.zip/${name}: ${says} It was left out.`)]);
    expect(status).toBe(3);
    expect(JSON.parse(out).swaps.map((s: { verdict: string }) => s.verdict)).toEqual(['inconclusive']);
  });

  test('without its phrasebook nothing is verified', async () => {
    const { status, err } = await steadypair('verify', await tampered({ 'phrasebook.yaml': 'name: other' }));
    expect(err).toContain('bad.zip/phrasebook.yaml: its content is not what the manifest lists');
    expect(status).not.toBe(0);
  });

  test.each([
    ['of a later version', () => ({ schema: 'steadypair/bundle/9' })],
    ['of other types', (said: object) => ({ ...said, members: 'all', logs: 7 })],
    ['without its lists', () => ({ schema: 'steadypair/bundle/1' })],
  ])('a manifest %s is one line', async (_, manifest) => {
    const { status, err } = await steadypair('verify', await tampered({}, manifest));
    expect(status).toBe(2);
    expect(err.trimEnd().split('\n')[0]).toMatch(
      /bad\.zip: its manifest\.json is damaged, or a later version of this program wrote it\. Ask for/,
    );
  });

  test('a manifest of another program leaves a zip as any other', async () => {
    const { err, out } = await steadypair(
      'inspect',
      await tampered({}, () => ({ schema: 'other/1' })),
      '--json',
    );
    expect(out).toContain('bad.zip/logs/ro1-events.log');
    expect(err).not.toContain('damaged');
  });

  test('names that lead out, a bomb and an archive inside are a line each', async () => {
    const bomb = new Uint8Array(30_000_000);
    const inner = await zipWith([['logs/x.log', 'x']]);
    const { status, err } = await steadypair(
      'verify',
      await tampered({ '../../out.log': 'x', 'logs/bomb.log': bomb, 'logs/ro1-notes.txt': inner }, (said) => {
        const sha256 = createHash('sha256').update(inner).digest('hex');
        const members = Array.isArray(said.members) ? said.members : [];
        return {
          ...said,
          members: [
            ...members.filter((m) => m.name !== 'logs/ro1-notes.txt'),
            { name: 'logs/ro1-notes.txt', bytes: 1, sha256 },
          ],
        };
      }),
    );
    expect(status).toBe(3);
    expect(err).toMatch(/out\.log: the path of this member leads out of the archive\./);
    expect(err).toMatch(/bomb\.log: it unpacks to more than 400 times its packed size/);
    expect(err).toMatch(/ro1-notes\.txt: it is an archive within an archive\./);
  });

  test.each([
    ['no YAML', 'messages: [', /bad\.zip\/phrasebook\.yaml:1: /],
    ['a key it does not know', 'mesages: []', /bad\.zip\/phrasebook\.yaml: /],
    [
      'a pattern without end',
      'messages: [{ when: "(a+)+\\\\1", signal: fault }]',
      /bad\.zip\/phrasebook\.yaml: /,
    ],
  ])('a phrasebook with %s is one line', async (_, text, says) => {
    const { status, err } = await steadypair(
      'verify',
      await tampered({ 'phrasebook.yaml': text }, relisted('phrasebook.yaml', text)),
    );
    expect([status, err.trimEnd().split('\n').length]).toEqual([2, 1]);
    expect(err).toMatch(says);
  });

  test('settings of other types are one line', async () => {
    const text = JSON.stringify({ zone: 7 });
    const { err } = await steadypair(
      'verify',
      await tampered({ 'settings.json': text }, relisted('settings.json', text)),
    );
    expect(err).toContain('bad.zip/settings.json: the settings of the bundle cannot be used.');
  });

  test('a member that no log of the manifest names is not read as one', async () => {
    const { out } = await steadypair(
      'inspect',
      await tampered({ 'README.txt': bytesOf('x') }, relisted('README.txt', 'x')),
      '--json',
    );
    expect(out).not.toContain('README.txt');
  });
});
