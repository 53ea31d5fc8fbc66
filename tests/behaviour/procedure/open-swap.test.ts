import { describe, expect, test } from 'vitest';
import type { OpenSwap } from '../../../src/vocabulary.ts';
import { before, openOf, type Plan, until, work } from '../../support/open-swaps.ts';
import { whenOf } from '../../support/pair-facts.ts';

const { out, in: inserted, identified, oldFirmware, reflash, ready, steady } = work;
const settled = [...out, ...inserted, ...identified, ...oldFirmware, ...reflash, ...ready, ...steady];

const awaited = (lines: readonly string[], plan?: Plan): Promise<OpenSwap | null> =>
  openOf([...before, ...lines].sort(), plan);
/** What is awaited, of which half, since when, against which limit, and how the hold point stands. */
const said = (open: OpenSwap | null): string =>
  open === null
    ? 'over'
    : `${open.awaits} ${open.half ?? 'pair'} since ${whenOf(open.since)} limit ${open.limitSeconds} ${open.holdPoint}`;
const steps = async (...lines: readonly string[]): Promise<string> => said(await awaited(lines));

describe('a swap waits for its next step', () => {
  test('a module, since the removal', async () => {
    expect(await steps(...out, until('09:05:00'))).toBe('in B since 09:00:00 limit 900 waiting');
  });

  test('what the new module is, since its insertion', async () => {
    expect(await steps(...out, ...inserted, until('09:05:00'))).toBe(
      'identified B since 09:02:00 limit 900 waiting',
    );
  });

  test('its firmware, since its first word, where it differs; since the start of a reflash, where that is logged', async () => {
    const differs = [...out, ...inserted, ...identified, ...oldFirmware];
    expect(await steps(...differs, until('09:05:00'))).toBe('reflash B since 09:02:30 limit 900 waiting');
    expect(await steps(...differs, '09:03:00 RO1 B reflash start', until('09:05:00'))).toBe(
      'reflash B since 09:03:00 limit 900 waiting',
    );
  });

  test('a ready partner, since the last start of the module', async () => {
    const same = [...out, ...inserted, ...identified, '09:02:40 RO1 B firmware 6.4.1'];
    expect(await steps(...same, until('09:05:00'))).toBe('ready B since 09:02:00 limit 900 waiting');
    expect(await steps(...same, '09:03:00 RO1 B module restart', until('09:05:00'))).toBe(
      'ready B since 09:03:00 limit 900 waiting',
    );
  });

  test('a steady light, from the start of the module on', async () => {
    const isReady = settled.filter((line) => !line.includes('steady'));
    expect(await steps(...isReady, until('09:09:00'))).toBe('steady B since 09:05:00 limit 300 waiting');
  });

  test('half an hour with a ready partner, from the ready that held on', async () => {
    expect(await steps(...settled, until('09:20:00'))).toBe('soak pair since 09:07:00 limit 1800 waiting');
    expect(await steps(...settled, until('09:36:59.999'))).toBe(
      'soak pair since 09:07:00 limit 1800 waiting',
    );
    expect(await steps(...settled, until('09:37:00'))).toBe('over');
  });

  test('a partner that was lost again, and then half an hour from its return on', async () => {
    const lost = [...settled, '09:12:00 RO1 partner not ready'];
    expect(await steps(...lost, until('09:13:00'))).toBe('ready pair since 09:12:00 limit 900 waiting');
    const back = [...lost, '09:14:00 RO1 partner ready'];
    expect(await steps(...back, until('09:20:00'))).toBe('soak pair since 09:14:00 limit 1800 waiting');
    expect((await awaited([...back, until('09:20:00')]))?.statement).toBe(
      'Waiting for a ready partner without a break for 30 minutes: 6 min 00 s so far.',
    );
    // The 30 minutes after it had settled are over, and had a break.
    expect(await steps(...back, until('09:37:00'))).toBe('over');
  });

  test('and for none that its log never tells of: no light, no readiness', async () => {
    const dark = settled.filter((line) => !line.includes('light'));
    expect(await steps(...dark, until('09:08:30'))).toBe('soak pair since 09:07:00 limit 1800 waiting');
    const silent = [...before, ...settled, until('09:36:00')].filter((line) => !line.includes('partner'));
    expect(said(await openOf(silent))).toBe('over');
  });
});

describe('past its limit', () => {
  const differs = [...out, ...inserted, ...identified, '09:02:40 RO1 B firmware 6.4.1'];

  test('a step stops the work while the last one is less than a quarter of an hour ago', async () => {
    const isReady = settled.filter((line) => !line.includes('steady'));
    expect(await steps(...isReady, until('09:10:00'))).toBe('steady B since 09:05:00 limit 300 waiting');
    expect(await steps(...isReady, until('09:10:00.001'))).toBe('steady B since 09:05:00 limit 300 stop');
    expect((await awaited([...isReady, until('09:12:00')]))?.conditions.at(-1)).toMatchObject({
      id: 'steady',
      half: 'B',
      status: 'stop',
      statement:
        'Stop and call for support: waited 7 min 00 s for the light of half B to be steady; the limit is 5 min 00 s.',
    });
  });

  test('nothing is awaited any more once the last step is a quarter of an hour ago', async () => {
    expect(await steps(...differs, until('09:16:59.999'))).toBe('ready B since 09:02:00 limit 900 waiting');
    expect(await steps(...differs, until('09:17:00'))).toBe('over');
  });
});

describe('the last step', () => {
  test('keeps a swap open for a quarter of an hour when all else is over: a switchover, stated or logged', async () => {
    const switchover = ['09:36:00 RO1 A role standby', '09:36:00 RO1 B role active'];
    expect(await steps(...settled, ...switchover, until('09:45:00'))).toBe(
      'soak pair since 09:36:00 limit 900 waiting',
    );
    expect(await steps(...settled, '09:36:00 RO1 switchover', until('09:45:00'))).toBe(
      'soak pair since 09:36:00 limit 900 waiting',
    );
    expect((await awaited([...settled, ...switchover, until('09:45:00')]))?.statement).toBe(
      'Waiting for 15 minutes without a further step: 9 min 00 s so far.',
    );
    expect(await steps(...settled, ...switchover, until('09:50:59.999'))).toBe(
      'soak pair since 09:36:00 limit 900 waiting',
    );
    expect(await steps(...settled, ...switchover, until('09:51:00'))).toBe('over');
  });
});

describe('the second half', () => {
  const models = before.map((line) => line.replace('Tern-4', 'Tern-2'));
  const byModels = async (...lines: readonly string[]): Promise<string> =>
    said(await openOf([...models, ...lines].sort()));

  test('is awaited for a day where the models differ, since the first one settled', async () => {
    expect(await byModels(...settled, until('09:20:00'))).toBe(
      'second-half A since 09:07:00 limit 86400 waiting',
    );
    // Long after the half hour of the first.
    expect(await byModels(...settled, until('21:00:00'))).toBe(
      'second-half A since 09:07:00 limit 86400 waiting',
    );
  });

  test('is not awaited where the models are the same, or not known', async () => {
    expect(await steps(...settled, until('09:40:00'))).toBe('over');
    const unknown = settled.filter((line) => !line.includes('model Tern'));
    expect(await byModels(...unknown, until('09:40:00'))).toBe('over');
  });

  test('is awaited where the plan names it, whatever the models', async () => {
    const plan = { A: { model: 'Tern-4' }, B: { model: 'Tern-4' } };
    expect(said(await awaited([...settled, until('09:40:00')], plan))).toBe(
      'second-half A since 09:07:00 limit 86400 waiting',
    );
  });

  test('is not awaited where the plan names the first alone, though the models differ', async () => {
    const plan = { B: { model: 'Tern-4' } };
    expect(said(await openOf([...models, ...settled, until('09:40:00')].sort(), plan))).toBe('over');
  });

  test('once it is out, is what is waited for', async () => {
    const second = ['09:40:00 RO1 A module removed', '09:40:00 RO1   partner not ready'];
    expect(await byModels(...settled, ...second, until('09:45:00'))).toBe(
      'in A since 09:40:00 limit 900 waiting',
    );
  });

  test('with its old firmware does not make the first wait for it again', async () => {
    const open = await awaited([
      ...settled,
      '08:40:00 RO1 A serial T4-8',
      '09:40:00 RO1 A module removed',
      '09:42:00 RO1 A module inserted',
      '09:42:30 RO1 A serial T4-9',
      '09:42:40 RO1 A firmware 6.2.0',
      until('09:43:00'),
    ]);
    expect(said(open)).toBe('reflash A since 09:42:30 limit 900 waiting');
    const waiting = open?.conditions.filter((c) => c.status !== 'met');
    expect(waiting?.map((c) => `${c.id} ${c.half} ${c.status}`)).toEqual(['reflash A waiting']);
  });

  test('out while the first has not settled leaves both to wait for, the last one first', async () => {
    const open = await awaited([
      ...out,
      ...inserted,
      ...identified,
      '09:04:00 RO1 A module removed',
      until('09:05:00'),
    ]);
    expect(said(open)).toBe('in A since 09:04:00 limit 900 waiting');
    expect(open?.conditions.map((c) => `${c.id} ${c.half} ${c.status}`)).toEqual([
      'in B met',
      'identified B met',
      'ready B waiting',
      'in A waiting',
    ]);
  });
});

describe('what is said of a swap under way', () => {
  test('names what is awaited, for how long, and the limit', async () => {
    expect((await awaited([...out, until('09:05:00')]))?.statement).toBe(
      'Waiting for a module in half B: 5 min 00 s so far, the limit is 15 min 00 s.',
    );
    expect((await awaited([...settled, until('09:20:00')]))?.statement).toBe(
      'Waiting for a ready partner without a break for 30 minutes: 13 min 00 s so far.',
    );
  });

  test('lists the steps that are done, then the one that is not, each with its lines', async () => {
    const open = await awaited([...settled, until('09:20:00')]);
    expect(open?.conditions.map(({ id, status, statement }) => `${id} ${status}: ${statement}`)).toEqual([
      'in met: A module is in half B.',
      'identified met: The new module in half B reports its identity.',
      'reflash met: Half B runs the right firmware.',
      'ready met: Half B is the ready partner.',
      'steady met: The light of half B is steady.',
      'soak waiting: Waiting for a ready partner without a break for 30 minutes: 13 min 00 s so far.',
    ]);
    const lines = open?.conditions.map((c) => c.evidence.map((line) => line.text.slice(11)));
    expect(lines?.slice(0, 5)).toEqual([
      ['09:02:00.000Z RO1-B module inserted'],
      ['09:02:30.000Z RO1-B serial T4-2'],
      ['09:05:10.000Z RO1-B firmware 6.4.1'],
      ['09:07:00.000Z RO1 partner ready'],
      ['09:09:00.000Z RO1-B light steady'],
    ]);
  });
});
