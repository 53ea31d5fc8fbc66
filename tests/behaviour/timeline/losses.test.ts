import { describe, expect, test } from 'vitest';
import { clockOf, factsOfPair } from '../../support/pair-facts.ts';

const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
const end = '10:40:00 RO1 A light off';
const lost = (clock: string): string => `${clock} RO1 partner not ready`;
const ready = (clock: string): string => `${clock} RO1 partner ready`;

async function losses(...lines: readonly string[]): Promise<readonly string[]> {
  return (await factsOfPair([...begin, ...lines, end])).losses.map(
    (l) => `${clockOf(l.event.time)} ${l.kind}`,
  );
}

describe('a loss of the partner', () => {
  test('counts, unless work or a restart brought it', async () => {
    expect(await losses(lost('10:10:00'), ready('10:12:00'), lost('10:20:00'))).toEqual([
      '10:10:00 counted',
      '10:20:00 counted',
    ]);
  });

  test('is planned from 5 s before a removal to the first readiness of the new module', async () => {
    const swapped = ['10:10:00 RO1 B module removed', '10:12:00 RO1 B module inserted', ready('10:14:00')];
    expect(await losses(lost('10:09:55'), ...swapped, lost('10:14:30'))).toEqual([
      '10:09:55 planned',
      '10:14:30 counted',
    ]);
    expect(await losses(lost('10:09:54.999'), ...swapped)).toEqual(['10:09:54.999 counted']);
  });

  test('is planned where the module never came back, to the end of the log or to where the partner was ready again', async () => {
    const removed = '10:10:00 RO1 B module removed';
    expect(await losses(removed, lost('10:10:01'))).toEqual(['10:10:01 planned']);
    expect(await losses(removed, lost('10:10:01'), ready('10:10:30'), lost('10:11:00'))).toEqual([
      '10:10:01 planned',
      '10:11:00 counted',
    ]);
  });

  test('is planned from the start of a reflash, or from the loss that a reflash without a start explains', async () => {
    const reflashed = ['10:12:00 RO1 B reflash end', ready('10:14:00'), lost('10:20:00')];
    expect(await losses('10:10:00 RO1 B reflash start', lost('10:10:01'), ...reflashed)).toEqual([
      '10:10:01 planned',
      '10:20:00 counted',
    ]);
    expect(await losses(lost('10:10:01'), ...reflashed)).toEqual(['10:10:01 planned', '10:20:00 counted']);
  });

  test('is planned from the start of a reflash that never ended, to where the partner was ready again', async () => {
    expect(
      await losses('10:10:00 RO1 B reflash start', lost('10:10:01'), ready('10:20:00'), lost('10:30:00')),
    ).toEqual(['10:10:01 planned', '10:30:00 counted']);
  });

  test('is planned in work that another start follows, as long as no readiness of before that start held', async () => {
    const work = ['10:10:00 RO1 B reflash start', lost('10:10:01'), ready('10:12:00')];
    const after = ['10:20:00 RO1 B reflash end', ready('10:25:00')];
    // Ready for 59 s, it was within the work; for 60 s, the pair was whole again: one more loss counts, and the last belongs
    // to the reflash that ended at 10:20.
    const last = [ready('10:14:00'), lost('10:16:00'), ...after];
    expect(await losses(...work, lost('10:12:59'), ...last)).toEqual([
      '10:10:01 planned',
      '10:12:59 planned',
      '10:16:00 planned',
    ]);
    expect(await losses(...work, lost('10:13:00'), ...last)).toEqual([
      '10:10:01 planned',
      '10:13:00 counted',
      '10:16:00 planned',
    ]);
  });

  test('counts after a note of work whose clock is wrong, and that nothing follows', async () => {
    const bursts = ['10:21:00', '10:23:00', '10:25:00'].flatMap((clock) => [
      lost(clock),
      ready(clock.replace(':00', ':30')),
    ]);
    expect(await losses('10:20:00 RO1 B reflash start', ...bursts)).toEqual([
      '10:21:00 planned',
      '10:23:00 counted',
      '10:25:00 counted',
    ]);
  });

  test('of a reflash that came after the work on the same half was done is explained by that reflash alone', async () => {
    const swapped = [
      '10:05:00 RO1 B module removed',
      lost('10:05:00'),
      '10:06:00 RO1 B module inserted',
      ready('10:08:00'),
    ];
    expect(
      await losses(...swapped, lost('10:10:00'), '10:12:00 RO1 B reflash end', ready('10:14:00')),
    ).toEqual(['10:05:00 planned', '10:10:00 planned']);
  });

  test('from before the work of which a reflash is only a part counts', async () => {
    const work = [
      '10:10:00 RO1 B module removed',
      '10:12:00 RO1 B module inserted',
      '10:15:00 RO1 B reflash end',
    ];
    expect(await losses(lost('10:05:00'), ...work, ready('10:17:00'))).toEqual(['10:05:00 counted']);
  });

  test('is not planned because a reflash ended that took nothing away', async () => {
    const early = [lost('10:05:00'), ready('10:06:00')];
    expect(await losses(...early, '10:12:00 RO1 B reflash end', lost('10:20:00'))).toEqual([
      '10:05:00 counted',
      '10:20:00 counted',
    ]);
  });

  test('belongs to a restart that it follows within 5 s', async () => {
    const restart = '10:10:00 RO1 B module restart';
    expect(await losses(restart, lost('10:10:05'))).toEqual(['10:10:05 restart']);
    expect(await losses(restart, lost('10:10:05.001'))).toEqual(['10:10:05.001 counted']);
    expect(await losses(lost('10:09:59.999'), restart)).toEqual(['10:09:59.999 counted']);
  });

  test('of presence counts where readiness is not logged', async () => {
    const lines = ['10:00:00 RO1 partner present', '10:10:00 RO1 partner absent', end];
    const { readiness, losses: found } = await factsOfPair(lines);
    expect([readiness.signal, found.map((l) => l.kind)]).toEqual(['partner-present', ['counted']]);
    expect((await factsOfPair([end])).readiness).toEqual({ signal: null, steps: [] });
  });
});
