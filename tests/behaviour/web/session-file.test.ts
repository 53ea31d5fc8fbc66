import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { diagnose, fleet, verify } from '../../../src/pipeline.ts';
import { diagnoseJson } from '../../../src/report/diagnose-json.ts';
import { fleetJson } from '../../../src/report/fleet-json.ts';
import { timelineJson } from '../../../src/report/timeline-documents.ts';
import { verifyJson } from '../../../src/report/verify-json.ts';
import { givenStore } from '../../../web/given-store.ts';
import type { GivenFile } from '../../../web/protocol.ts';
import { readSession } from '../../../web/session-file.ts';
import { alignSite, type SiteSession, saveSite, siteModel } from '../../../web/site-session.ts';
import { given, readGiven } from '../../support/read-given.ts';

const site = join('samples', 'marrow-bay');
const saved = Date.UTC(2026, 10, 29, 9, 14);

function digest(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

function story(name: string): readonly GivenFile[] {
  return readdirSync(join(site, name)).map((file) =>
    given(file, readFileSync(join(site, name, file), 'utf8')),
  );
}

function save(session: SiteSession, page = '#swap?pair=RO1&swap=1'): { name: string; text: string } {
  return saveSite(session, { kind: 'session', page, saved, version: '1.2.3' }, digest);
}

/** All documents that a reading gives. */
function documents({ analysed, jobs }: SiteSession): readonly string[] {
  return [
    timelineJson(
      analysed.files.map((f) => f.input),
      analysed.timelines,
    ),
    ...analysed.timelines.flatMap(({ pair }) => [
      verifyJson(verify(analysed, pair, { from: null, to: null }, jobs.get(pair) ?? null)),
      diagnoseJson(diagnose(analysed, pair)),
    ]),
    fleetJson(fleet(analysed, { by: 'model', swaps: 10 })),
  ];
}

/** What the page shows, but for which files were given: of a session that is one. */
function shown(session: SiteSession): unknown {
  const { given: _given, sessions: _sessions, ...rest } = siteModel(session);
  return rest;
}

let whole: SiteSession;
let first: { readonly name: string; readonly text: string };
let again: SiteSession;
beforeAll(async () => {
  const zip = zipSync({ 'deep/pretreat.csv': readFileSync(join(site, 'wont-sync', 'pretreat-journal.csv')) });
  const files = [
    ...story('clean-swap'),
    given('more.zip', Uint8Array.from(zip)),
    given('left-out.csv', 'nothing to see\n'),
  ];
  const { site: read } = await readGiven(files, { jobs: { RO1: { workOrder: 'WO-7', technician: 'Kim' } } });
  whole = alignSite(read, true);
  first = save(whole);
  again = (await readGiven([given(first.name, first.text)])).site;
});

describe('a session', () => {
  test('gives every document, view and hash as the files do', async () => {
    const { name } = first;
    expect(name).toMatch(/^[\w-]+-\d{4}-\d\d-\d\d\.steadypair-session\.json$/);
    expect(documents(again)).toEqual(documents(whole));
    expect(shown(again)).toEqual(shown(whole));
    expect(siteModel(again).sessions).toEqual([
      {
        id: expect.any(Number),
        file: name,
        saved: '2026-11-29T09:14:00.000Z',
        page: '#swap?pair=RO1&swap=1',
      },
    ]);
  });

  test('that is opened, saved and opened again gives the same', async () => {
    const second = save(again);
    const { site: third } = await readGiven([given(second.name, second.text)]);
    expect(second.name).toBe(first.name);
    expect(documents(third)).toEqual(documents(whole));
    expect(shown(third)).toEqual(shown(whole));
  });

  test('has no file from which lines could be read', () => {
    expect(again.lines.size).toBe(0);
  });

  test('takes files beside it: those that it holds count once', async () => {
    const { name, text } = first;
    const store = givenStore();
    const session = given(name, text);
    await readGiven([session], {}, store);
    const log = story('clean-swap').find((file) => file.name === 'ro1-journal.csv');
    if (log === undefined) throw new Error('There is no such file.');
    const { site: both } = await readGiven([session, log], { isAligned: true }, store);
    expect(documents(both)).toEqual(documents(whole));
    expect(both.given.map((g) => g.became)[1]).toContain('used once');
    const other = given('ro9.csv', 'time,unit,message\n2026-03-14T09:00:00Z,RO9,partner ready\n');
    const { site: more } = await readGiven([session, other], { isAligned: true }, store);
    expect(more.analysed.timelines.map(({ pair }) => pair)).toEqual(
      [...whole.analysed.timelines.map(({ pair }) => pair), 'RO9'].sort(),
    );
  });
});

describe('a session that cannot be opened', () => {
  const refusal = async (text: string, others: readonly GivenFile[] = []): Promise<string> => {
    const { site: read } = await readGiven([given('a.steadypair-session.json', text), ...others]);
    return read.imported.failures.map(({ message }) => message).join('\n');
  };

  test('is refused in one line where it is of another version', async () => {
    const text = first.text.replace('steadypair/session/1', 'steadypair/session/2');
    await expect(refusal(text)).rejects.toThrow(
      'a.steadypair-session.json: it is a session of another version (steadypair/session/2; this page reads steadypair/session/1). Open it with the version that saved it, or drop the log files themselves.',
    );
  });

  test('is refused in one line wherever it is cut off or changed', async () => {
    const { text } = first;
    const damaged = 'a.steadypair-session.json: this session file is damaged or cut off.';
    for (const share of [0.05, 0.3, 0.9, 0.9999])
      await expect(refusal(text.slice(0, Math.floor(text.length * share)))).rejects.toThrow(damaged);
    await expect(refusal(text.replace('WO-7', 'WO-8'))).rejects.toThrow(damaged);
    await expect(
      refusal(text.replace(/"timelines":"..../, (found) => `${found.slice(0, -1)}!`)),
    ).rejects.toThrow(damaged);
  });

  test.each(['phrasebook', 'jobs', 'inputs', 'reports', 'timelines', 'page', 'saved'])(
    'is refused without its %s, whatever its seal says',
    (key) => {
      const { sha256: _, [key]: _gone, ...rest } = JSON.parse(first.text);
      const body = JSON.stringify(rest);
      const text = `${body.slice(0, -1)},"sha256":"${digest(new TextEncoder().encode(body))}"}`;
      expect(() => readSession('a.json', text, digest)).toThrow('this session file is damaged or cut off');
    },
  );

  test('stands in the way of no log beside it', async () => {
    const log = given('b.csv', 'time,unit,message\n2026-03-14T09:00:00Z,RO1,partner ready\n');
    expect(await refusal('{"schema":"steadypair/session/1"', [log])).toContain('damaged or cut off');
  });
});
