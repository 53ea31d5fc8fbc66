import { describe, expect, test } from 'vitest';
import { at } from '../support/clean-swap.ts';
import { morning, numbers, sheetFrom, sheetOfFiles, twoDays, without } from '../support/prepared.ts';
import { analyseTexts } from '../support/read-text.ts';

const day = 86_400_000;

describe('which half is standby', () => {
  test('is the one that a line states, as of the last line, with its age and lines', async () => {
    const { standby, asOf, madeAt, site } = await sheetOfFiles(twoDays(morning));
    expect(standby).toMatchObject({ half: 'B', because: null, restsOn: 'role', ageSeconds: 1800 });
    expect([asOf.time, madeAt, site]).toEqual([at('09:00:00'), at('09:30:00'), null]);
    // The roles of both halves, and the last line: until then nothing said otherwise.
    expect(numbers(standby.evidence)).toEqual([1, 2, 13]);
  });

  test('is named from lines of a day, not from older ones, and then neither are role and light', async () => {
    const told = twoDays(morning);
    const fresh = await sheetOfFiles(told, { now: at('09:00:00') + day });
    expect(fresh.standby.half).toBe('B');
    const old = await sheetOfFiles(told, { now: at('09:00:00') + day + 1 });
    expect([old.standby.half, old.standby.because]).toEqual([null, 'too-old']);
    expect(old.halves.flatMap((h) => [h.role.value, h.light.value])).toEqual([null, null, null, null]);
    expect(old.halves.map((h) => h.serial.value)).toEqual(['T2-1', 'T2-2']);
    expect(old.steps.filter((s) => s.half !== null)).toEqual([]);
    const { standby, halves, steps } = old;
    expect(JSON.stringify(steps.flatMap((s) => [s.title, s.holdPoint?.statement]))).not.toMatch(/half [AB]/);
    expect(steps.some((s) => s.title.includes('half ____'))).toBe(true);
    expect(JSON.stringify([standby, halves])).not.toMatch(/role (?:active|standby)/);
    // What shows how old they are: the last line.
    expect(numbers(standby.evidence)).toEqual([13]);
    const { conditions = [] } = steps.find((s) => s.holdPoint !== null)?.holdPoint ?? {};
    const ofRoles = conditions.filter((c) => c.id === 'roles' || c.id === 'steady');
    expect(ofRoles.map((c) => [c.half, c.status, c.statement, numbers(c.evidence)])).toEqual([
      [null, 'waiting', 'Half ____ is standby and the other half active.', [13]],
      [null, 'waiting', 'The light of half ____ is steady.', [13]],
    ]);
  });

  test('is named from older ones where that is asked for, with their age', async () => {
    const { standby, halves } = await sheetOfFiles(twoDays(morning), {
      now: at('09:00:00') + 2 * day,
      allowOld: true,
    });
    expect([standby.half, standby.because, standby.ageSeconds]).toEqual(['B', null, 172_800]);
    expect(halves.map((h) => h.role.value)).toEqual(['active', 'standby']);
  });

  test('is not named from lines ahead of the clock: no age can be told', async () => {
    const told = twoDays(morning);
    const near = await sheetOfFiles(told, { now: at('08:45:00') });
    expect([near.standby.half, near.standby.ageSeconds]).toEqual(['B', -900]);
    const far = await sheetOfFiles(told, { now: at('08:44:59') });
    expect([far.standby.half, far.standby.because]).toEqual([null, 'ahead']);
  });

  test('goes by when its role was read last, where the log of the pair goes on without it', async () => {
    const rows = ['time,unit,parameter,value'];
    for (const time of ['07:00', '07:10', '07:20', '07:30'])
      for (const [half, role] of [
        ['A', 'active'],
        ['B', 'standby'],
      ])
        rows.push(`2026-03-14T${time}:00Z,RO1-${half},role,${role}`);
    const { standby, asOf } = await sheetOfFiles({
      'poll.csv': `${rows.join('\n')}\n`,
      'ro1.log': twoDays(without(morning, 'role')),
    });
    // 09:30 less 07:30.
    expect([standby.half, standby.ageSeconds, asOf.time]).toEqual(['B', 7200, at('09:00:00')]);
  });

  test('is said to be concluded where only the other half states its role', async () => {
    const { standby, halves } = await sheetOfFiles(twoDays(without(morning, 'B role')));
    expect([standby.half, standby.restsOn]).toEqual(['B', 'other-half']);
    expect(halves.map((h) => h.role.isConcluded)).toEqual([false, true]);
  });

  test('is said to be concluded from its light where no role was ever logged', async () => {
    const { standby } = await sheetOfFiles(twoDays(without(morning, 'role')));
    expect([standby.half, standby.restsOn]).toEqual(['B', 'light']);
    expect(numbers(standby.evidence)).toEqual([10, 11]);
  });

  test('is not known where nothing tells', async () => {
    const { standby } = await sheetOfFiles(twoDays(without(morning, 'role', 'light')));
    expect([standby.half, standby.because, standby.restsOn]).toEqual([null, 'not-logged', null]);
  });

  test('is none while its place is empty, though the other half is active', async () => {
    const out = [
      '08:50:00 RO1 B module removed',
      '08:50:00 RO1 B role none',
      '08:50:00 RO1 partner not ready',
    ];
    const { standby, readiness } = await sheetOfFiles(twoDays(morning, out));
    expect([standby.half, standby.because]).toEqual([null, 'none']);
    expect(readiness.fit).toBe(false);
  });

  test('is none where both are active, and the pair is not fit', async () => {
    const both = ['08:50:00 RO1 B role active', '09:00:00 RO1 configuration current'];
    const { standby, readiness } = await sheetOfFiles(twoDays(morning, both));
    expect([standby.half, standby.because, readiness.fit]).toEqual([null, 'none', false]);
    expect(readiness.reasons[0]?.statement).toBe('Both halves are active.');
    expect(numbers(readiness.reasons[0]?.evidence ?? [])).toEqual([1, 13]);
  });

  test('is not named where both say that they are standby, and the pair is not fit', async () => {
    const none = ['08:50:00 RO1 A role standby', '09:00:00 RO1 configuration current'];
    const { standby, readiness } = await sheetOfFiles(twoDays(morning, none));
    expect([standby.half, standby.because, readiness.fit]).toEqual([null, 'several', false]);
    expect(readiness.reasons[0]?.statement).toBe('Neither half is active.');
  });

  test('is only concluded of a half of which no line was ever logged, and the pair is not fit or not known to be', async () => {
    const { standby, halves, readiness } = await sheetOfFiles(twoDays(without(morning, 'RO1 B')));
    expect([standby.half, standby.restsOn]).toEqual(['B', 'other-half']);
    expect(halves.map((h) => [h.half, h.serial.value])).toEqual([
      ['A', 'T2-1'],
      ['B', null],
    ]);
    expect(readiness.fit).toBe(null);
    expect(readiness.reasons.map((r) => r.statement)).toEqual([
      'The firmware of half B is not known.',
      'The model of half B is not known.',
    ]);
  });
});

describe('the pair', () => {
  const two = { 'ro1.log': twoDays(morning), 'ro3.log': twoDays(morning).replaceAll('RO1', 'RO3') };

  test('is the only one, the one that is named, or the only one that the job plans', async () => {
    const analysed = await analyseTexts(two);
    expect(sheetFrom(analysed, { pair: 'RO3' }).pair).toBe('RO3');
    expect(sheetFrom(analysed, { job: { plan: { RO3: {} } } }).pair).toBe('RO3');
    expect((await sheetOfFiles(two['ro1.log'])).pair).toBe('RO1');
  });

  test('is asked for in one line with all names where nothing settles it', async () => {
    const analysed = await analyseTexts(two);
    const line = 'prepare: the files name 2 pairs, and a work sheet is of one. Choose one of RO1, RO3.';
    expect(() => sheetFrom(analysed)).toThrow(line);
    expect(() => sheetFrom(analysed, { job: { plan: { RO1: {}, RO3: {} } } })).toThrow(line);
  });

  test('must be in the files, and so must all that is planned', async () => {
    const analysed = await analyseTexts(two);
    expect(() => sheetFrom(analysed, { pair: 'RO9' })).toThrow(
      'pair RO9: no file names that pair. Choose one of RO1, RO3.',
    );
    expect(() => sheetFrom(analysed, { job: { file: 'job.yaml', plan: { RO9: {} } } })).toThrow(
      'job.yaml: plan.RO9: no file names that pair.',
    );
    const job = { file: 'job.yaml', plan: { RO1: { C: { firmware: '6.4.1' } } } };
    expect(() => sheetFrom(analysed, { job })).toThrow(
      'job.yaml: plan.RO1.C: no file names that half. The halves of RO1 are A and B.',
    );
  });

  test('must be named by the files at all', async () => {
    const analysed = await analyseTexts({ 'x.log': '2026-03-14T09:00:00.000Z all is well here\n' });
    expect(() => sheetFrom(analysed)).toThrow('prepare: the files name no pair.');
  });
});
