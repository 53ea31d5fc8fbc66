import { describe, expect, test } from 'vitest';
import type { BringUp } from '../../../src/vocabulary.ts';
import { pollText } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair, secondsOf, type Told, whenOf } from '../../support/pair-facts.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
const out = ['10:10:00 RO1 B module removed', '10:10:00 RO1 partner not ready'];
const inserted = [...out, '10:12:00 RO1 B module inserted'];
const end = '10:30:00 RO1 A light off';

const told = ({ half, cause, start, outcome, sync, settledSeconds, watchedTo }: BringUp): string =>
  `${half} ${cause} ${whenOf(start)} ${outcome}, ready ${sync.outcome ?? secondsOf(sync)}, for good ${settledSeconds}, watched to ${clockOf(watchedTo)}`;
async function bringUps(story: Told): Promise<readonly string[]> {
  return (await factsOfPair(story)).bringUps.map(told);
}
const following = (...lines: readonly string[]): Promise<readonly string[]> =>
  bringUps([...begin, ...lines, end]);

describe('a bring-up', () => {
  test('begins at the insertion and has settled once the partner is ready and that has held', async () => {
    expect(await following(...inserted, '10:14:00 RO1 partner ready')).toEqual([
      'B inserted 10:12:00 settled, ready 120, for good 120, watched to 10:30:00',
    ]);
  });

  test('of a new module knows nothing of what the one before reported; that of the same module does', async () => {
    const firmware = async (...lines: readonly string[]): Promise<readonly (string | null)[]> =>
      (await factsOfPair([...begin, '10:00:00 RO1 B firmware 6.2.0', ...lines, end])).bringUps.map(
        (b) => b.firmware,
      );
    const ready = '10:14:00 RO1 partner ready';
    expect(await firmware(...inserted, ready)).toEqual([null]);
    expect(await firmware('10:12:00 RO1 B module inserted', ready)).toEqual([null]);
    expect(await firmware(...inserted, '10:13:00 RO1 B firmware 6.4.1', ready)).toEqual(['6.4.1']);
    expect(await firmware('10:12:00 RO1 B module restart', ready)).toEqual(['6.2.0']);
  });

  test('has settled where the partner stayed ready for a minute, and is lost where it did not', async () => {
    const lost = (clock: string): readonly string[] => [
      ...inserted,
      '10:14:00 RO1 partner ready',
      `${clock} RO1 partner not ready`,
    ];
    expect(await following(...lost('10:15:00'))).toEqual([
      'B inserted 10:12:00 settled, ready 120, for good 120, watched to 10:30:00',
    ]);
    expect(await following(...lost('10:14:59.999'))).toEqual([
      'B inserted 10:12:00 lost, ready 120, for good null, watched to 10:30:00',
    ]);
    expect(await following(...lost('10:14:30'), '10:20:00 RO1 partner ready')).toEqual([
      'B inserted 10:12:00 settled, ready 120, for good 480, watched to 10:30:00',
    ]);
  });

  test('that is cut off before it held is unfinished: by the end of the log, or by a removal', async () => {
    const ready = [...inserted, '10:14:00 RO1 partner ready'];
    expect(await bringUps([...begin, ...ready, '10:14:59 RO1 A light off'])).toEqual([
      'B inserted 10:12:00 unfinished, ready 120, for good null, watched to 10:14:59',
    ]);
    expect(await following(...inserted, '10:13:00 RO1 B module removed')).toEqual([
      'B inserted 10:12:00 unfinished, ready 60-, for good null, watched to 10:13:00',
    ]);
    expect(await following(...inserted)).toEqual([
      'B inserted 10:12:00 unfinished, ready 1080-, for good null, watched to 10:30:00',
    ]);
  });

  test('is superseded by a reflash, at whose start the watch ends', async () => {
    const reflash = [
      '10:13:00 RO1 B reflash start',
      '10:15:00 RO1 B reflash end',
      '10:17:00 RO1 partner ready',
    ];
    expect(await following(...inserted, ...reflash)).toEqual([
      'B inserted 10:12:00 superseded, ready 60-, for good null, watched to 10:13:00',
      'B reflash 10:15:00 settled, ready 120, for good 120, watched to 10:30:00',
    ]);
  });

  test('is superseded by a restart, and at a failed synchronisation before that the watch ends', async () => {
    const restart = ['10:16:00 RO1 B module restart', '10:18:00 RO1 partner ready'];
    expect(await following(...inserted, ...restart)).toEqual([
      'B inserted 10:12:00 superseded, ready 240-, for good null, watched to 10:16:00',
      'B restart 10:16:00 settled, ready 120, for good 120, watched to 10:30:00',
    ]);
    expect(await following(...inserted, '10:14:00 RO1 B sync failed', ...restart)).toEqual([
      'B inserted 10:12:00 superseded, ready 120-, for good null, watched to 10:14:00',
      'B restart 10:16:00 settled, ready 120, for good 120, watched to 10:30:00',
    ]);
    expect((await following(...inserted, ...restart, '10:20:00 RO1 B sync failed'))[0]).toContain(
      'to 10:16:00',
    );
  });

  test('ends its watch at the loss before a reflash of which only the new firmware tells', async () => {
    const firmware = ['10:12:00 RO1 B firmware 6.2.0', '10:25:00 RO1 B firmware 6.4.1'];
    const ready = ['10:14:00 RO1 partner ready', '10:20:00 RO1 partner not ready'];
    expect(await following(...inserted, ...firmware, ...ready)).toEqual([
      'B inserted 10:12:00 settled, ready 120, for good 120, watched to 10:20:00',
      'B reflash 10:25:00 unfinished, ready 300-, for good null, watched to 10:30:00',
    ]);
    // Without a loss in between it ends at the new firmware; the loss of the removal was before it began.
    expect((await following(...inserted, ...firmware))[0]).toContain('watched to 10:25:00');
  });

  test('is superseded by a switchover onto it', async () => {
    const taken = ['10:14:00 RO1 A role standby', '10:14:00 RO1 B role active'];
    expect(await following(...inserted, ...taken)).toEqual([
      'B inserted 10:12:00 superseded, ready 120-, for good null, watched to 10:14:00',
    ]);
  });

  test('of the active half begins when it is standby again; where it never is, there is none', async () => {
    const lines = ['10:10:00 RO1 A module restart', '10:10:00 RO1 partner not ready'];
    const again = ['10:11:00 RO1 A role standby', '10:11:00 RO1 B role active', '10:13:00 RO1 partner ready'];
    expect(await following(...lines, ...again)).toEqual([
      'A restart 10:11:00 settled, ready 120, for good 120, watched to 10:30:00',
    ]);
    expect(await following(...lines)).toEqual([]);
    // In the order of their starts, not of their restarts.
    const other = '10:10:30 RO1 B module restart';
    expect((await following(...lines, other, ...again)).map((line) => line.slice(0, 18))).toEqual([
      'B restart 10:10:30',
      'A restart 10:11:00',
    ]);
  });

  test('by polls has bounds: another firmware was read, then the partner as ready', async () => {
    // Reflashed by a time in (10:11:50, 10:12:00], ready in (10:13:50, 10:14:00]: 110 s to 130 s.
    const poll = pollText(['10:00:00', '10:30:00'], 10, [
      ['RO1', 'partner-ready', ['10:00:00', 'yes'], ['10:10:00', 'no'], ['10:14:00', 'yes']],
      ['RO1-B', 'firmware', ['10:00:00', '6.2.0'], ['10:12:00', '6.4.1']],
    ]);
    expect(await bringUps({ 'poll.csv': poll })).toEqual([
      'B reflash 10:11:50..10:12:00 settled, ready 110-130, for good 120, watched to 10:30:00',
    ]);
    const { bringUps: found } = await factsOfPair({ 'poll.csv': poll });
    expect(found.map((b) => b.startDerived)).toEqual([true]);
    expect((await factsOfPair([...begin, ...inserted, end])).bringUps.map((b) => b.startDerived)).toEqual([
      false,
    ]);
  });

  test('tells nothing of readiness where no reading saw it broken, or it was never logged', async () => {
    // Every five minutes: between two readings the serial changed, and the partner was ready at both.
    const poll = pollText(['10:00:00', '10:30:00'], 300, [
      ['RO1', 'partner-ready', ['10:00:00', 'yes']],
      ['RO1-B', 'serial', ['10:00:00', 'T2-1'], ['10:12:00', 'T4-2']],
    ]);
    expect(await bringUps({ 'poll.csv': poll })).toEqual([
      'B inserted 10:10:00..10:15:00 unfinished, ready not-observed, for good null, watched to 10:30:00',
    ]);
    const silent = inserted.filter((line) => !line.includes('partner'));
    expect(await bringUps([...begin.slice(0, 2), ...silent, end])).toEqual([
      'B inserted 10:12:00 unfinished, ready not-observed, for good null, watched to 10:30:00',
    ]);
  });
});

describe('what came up', () => {
  const identity = async (...lines: readonly string[]): Promise<readonly unknown[]> =>
    (await factsOfPair([...begin, ...inserted, ...lines, end])).bringUps.map((b) => [
      b.model,
      b.serial,
      b.firmware,
    ]);

  test('is what was reported at its start, else the first report while it was watched', async () => {
    const own = [
      '10:12:00 RO1 B model Tern-4',
      '10:12:20 RO1 B serial T4-2',
      '10:12:40 RO1 B firmware 6.2.0',
    ];
    expect(await identity(...own)).toEqual([['Tern-4', 'T4-2', '6.2.0']]);
  });

  test('is not known where it was first reported after the watch had ended', async () => {
    expect(await identity('10:13:00 RO1 B module removed', '10:13:01 RO1 B model Tern-4')).toEqual([
      [null, null, null],
    ]);
    expect(await identity('10:13:00 RO1 B module removed', '10:13:00 RO1 B model Tern-4')).toEqual([
      ['Tern-4', null, null],
    ]);
  });
});

describe('the lines of a bring-up', () => {
  const evidence = async (...lines: readonly string[]): Promise<readonly (readonly number[])[]> =>
    (await factsOfPair([...begin, ...inserted, ...lines, end])).bringUps.map((b) =>
      b.evidence.map((l) => l.line),
    );

  test('are its start, the first readiness and the one that held; without one the start and the last line', async () => {
    expect(await evidence('10:14:00 RO1 partner ready')).toEqual([[6, 7]]);
    const again = [
      '10:14:00 RO1 partner ready',
      '10:14:30 RO1 partner not ready',
      '10:20:00 RO1 partner ready',
    ];
    expect(await evidence(...again)).toEqual([[6, 7, 9]]);
    expect(await evidence('10:15:00 RO1 B light flashing')).toEqual([[6, 8]]);
  });
});
