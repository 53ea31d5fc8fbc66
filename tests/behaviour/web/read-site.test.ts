import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { InputError, teachAll } from '../../../src/pipeline.ts';
import { givenStore } from '../../../web/given-store.ts';
import type { ReadingNews } from '../../../web/protocol.ts';
import { readSite } from '../../../web/read-site.ts';
import { type SiteSession, siteModel } from '../../../web/site-session.ts';
import { asked, given, readGiven } from '../../support/read-given.ts';

const ready = 'time,unit,message\n2026-03-14T09:00:00Z,RO1,partner ready\n';

function became(site: SiteSession): Readonly<Record<string, string>> {
  return Object.fromEntries(site.given.map((g) => [g.name, g.became]));
}

describe('a file given twice', () => {
  test('under another name is used once, and told', async () => {
    const { site } = await readGiven([given('a.csv', ready), given('copy of a.csv', ready)]);
    expect(site.imported.files.map(({ input }) => input.file)).toEqual(['a.csv']);
    expect(became(site)['copy of a.csv']).toBe('Same content as a.csv: used once');
    expect(site.given.map(({ twin }) => twin)).toEqual([null, 'a.csv']);
    // The SHA-256 of both is that of their content.
    expect(new Set(site.given.map(({ sha256 }) => sha256)).size).toBe(1);
  });

  test('later, under a name that comes first, changes nothing', async () => {
    const first = given('z.csv', ready);
    const { site } = await readGiven([first, given('a.csv', ready)]);
    expect(site.imported.files.map(({ input }) => input.file)).toEqual(['z.csv']);
    expect(became(site)['a.csv']).toBe('Same content as z.csv: used once');
  });

  test('in an archive and beside it is used once', async () => {
    const zip = zipSync({ 'deep/a.csv': new TextEncoder().encode(ready) });
    const { site } = await readGiven([given('a.csv', ready), given('b.zip', Uint8Array.from(zip))]);
    expect(site.imported.files.map(({ input }) => input.file)).toEqual(['a.csv']);
  });

  test('whose name says that it is of another half stays', async () => {
    const lines = 'time,message\n2026-03-14T09:00:00Z,light steady\n';
    const phrasebook = given(
      'site.yaml',
      'files:\n  - match: "*.csv"\n    layout: journal\n    path: "(?<pair>RO1)-(?<half>[AB])"\n',
    );
    const { site } = await readGiven([phrasebook, given('RO1-A.csv', lines), given('RO1-B.csv', lines)]);
    expect(site.imported.failures).toEqual([]);
    expect(site.imported.files.map(({ input }) => input.file)).toEqual(['RO1-A.csv', 'RO1-B.csv']);
  });
});

describe('bad files beside a good one', () => {
  test('are left out, each with its reason, and the good one is read', async () => {
    const picture = Uint8Array.from({ length: 600 }, (_, index) => index % 7);
    const { site, news } = await readGiven([
      given('good.csv', ready),
      given('picture.png', picture),
      given('empty.csv', ''),
      given('site.yaml', 'messages: 5\n'),
    ]);
    const model = siteModel(site);
    expect(model.pairs.map(({ health }) => health.pair)).toEqual(['RO1']);
    expect(became(site)).toEqual({
      'good.csv': 'journal, one row',
      'picture.png': 'Left out: this is a binary file, not text.',
      'empty.csv': 'Left out: the file is empty.',
      'site.yaml': expect.stringContaining('Left out: messages is 5'),
    });
    expect(model.failures.filter(({ kind }) => kind === 'refused').map(({ where }) => where)).toEqual([
      'site.yaml',
    ]);
    // They are tried again once the others are known.
    const failed = news.flatMap((n) => (n.kind === 'failure' ? [n.failure.where] : []));
    expect([...new Set(failed)]).toEqual(['empty.csv', 'picture.png']);
    // What was of no use has a hash too.
    expect(site.given.every(({ sha256 }) => /^[0-9a-f]{64}$/.test(sha256 ?? ''))).toBe(true);
  });

  test('one of which vanished stand as they are, and that one is told of', async () => {
    const gone = given('gone.csv', ready);
    const slice = (): Blob => {
      throw new DOMException('It is gone.', 'NotFoundError');
    };
    Object.defineProperty(gone.file, 'slice', { value: slice });
    const { site } = await readGiven([given('good.csv', ready), gone]);
    expect(became(site)['good.csv']).toBe('journal, one row');
    expect(became(site)['gone.csv']).toContain('Left out: it cannot be read any more');
    expect(site.given[1]?.sha256).toBeNull();
  });

  test('are two hundred, and all are told of', async () => {
    const many = Array.from({ length: 200 }, (_, i) => {
      const clock = `${String(i % 24).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}`;
      return given(`p${i}.csv`, `time,unit,message\n2026-03-14T${clock}:00Z,P${i}-A,partner ready\n`);
    });
    const { site } = await readGiven(many);
    expect(site.given.map((g) => g.became)).toEqual(many.map(() => 'journal, one row'));
    expect(siteModel(site).pairs).toHaveLength(200);
  });
});

describe('what a person typed', () => {
  test('is the job of its pair in every reading, with the plan of a job file', async () => {
    const job = given('job.yaml', 'workOrder: WO-1\nplan:\n  RO1:\n    A: { model: M-2 }\n');
    const typed = { RO1: { workOrder: 'WO-7', technician: 'Kim' } };
    const log = given('a.csv', ready.replace('RO1', 'RO1-A'));
    const { site } = await readGiven([log, job], { jobs: typed });
    expect(site.jobs.get('RO1')).toEqual({
      workOrder: 'WO-7',
      technician: 'Kim',
      file: 'job.yaml',
      plan: { RO1: { A: { model: 'M-2' } } },
    });
  });

  test('and emptied again is no job', async () => {
    const job = given('job.yaml', 'workOrder: WO-1\n');
    const { site } = await readGiven([given('a.csv', ready), job], { jobs: { RO1: null } });
    expect(site.jobs.size).toBe(0);
  });
});

describe('another reading', () => {
  const story = join('samples', 'marrow-bay', 'clean-swap');
  const demo = readdirSync(story).map((name) => given(name, readFileSync(join(story, name), 'utf8')));

  function bytesRead(news: readonly ReadingNews[]): readonly number[] {
    return [...new Set(news.flatMap((n) => (n.kind === 'bytes' ? [n.file] : [])))];
  }

  test('reads only the file that was added, and gives what one reading of all gives', async () => {
    const store = givenStore();
    const added = demo.find(({ name }) => name === 'ro1-journal.csv');
    if (added === undefined) throw new Error('There is no such file.');
    const others = demo.filter(({ name }) => name !== added.name && !name.endsWith('notes.txt'));
    await readGiven(others, {}, store);
    const all = [...others, added];
    const { site, news } = await readGiven(all, {}, store);
    expect(bytesRead(news)).toEqual([added.id]);
    const kept = news.flatMap((n) => (n.kind === 'kept' ? n.files : []));
    expect(kept).toHaveLength(others.filter(({ name }) => !name.endsWith('.yaml')).length);
    expect(siteModel(site)).toEqual(siteModel((await readGiven(all)).site));
  });

  test('after a lesson gives what one reading with it gives', async () => {
    const store = givenStore();
    await readGiven(demo, {}, store);
    const text = readFileSync(join(story, 'phrasebook.yaml'), 'utf8');
    const chosen = {
      text: {
        file: 'phrasebook.yaml',
        text: teachAll('phrasebook.yaml', text, [{ kind: 'ignore', pattern: '^no log says this$' }]),
      },
      instead: [],
    };
    const { site, news } = await readGiven(demo, { phrasebook: chosen }, store);
    expect(bytesRead(news)).toEqual([]);
    expect(siteModel(site)).toEqual(siteModel((await readGiven(demo, { phrasebook: chosen })).site));
  });

  test('that is ended leaves the store as good as before', async () => {
    const store = givenStore();
    const stop = readSite(asked(demo), store, () => {
      throw new Error('ended');
    });
    await expect(stop).rejects.toThrow('ended');
    expect(siteModel((await readGiven(demo, {}, store)).site)).toEqual(
      siteModel((await readGiven(demo)).site),
    );
  });
});

test('a phrasebook beside the one in use is named, one that was loaded in its place is not', async () => {
  const one = given('one.yaml', 'ignore: [x]\n');
  const two = given('two.yaml', 'ignore: [y]\n');
  const { site } = await readGiven([given('a.csv', ready), one, two]);
  expect(site.phrasebook?.file).toBe('two.yaml');
  expect(site.imported.failures.map(({ where }) => where)).toEqual(['one.yaml']);
  const chosen = { text: { file: 'three.yaml', text: 'ignore: [z]\n' }, instead: ['two.yaml'] };
  const again = await readGiven([given('a.csv', ready), one, two], { phrasebook: chosen });
  expect(again.site.imported.failures.map(({ where }) => where)).toEqual(['one.yaml']);
  const none = await readGiven([given('a.csv', ready), one, two], {
    phrasebook: { text: null, instead: ['two.yaml'] },
  });
  expect(none.site.phrasebook).toBeNull();
  expect(none.site.imported.failures[0]).toBeInstanceOf(InputError);
});
