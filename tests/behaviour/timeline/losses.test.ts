import { describe, expect, test } from 'vitest';
import { availabilityOf, type Exposed, sumSpans } from '../../../src/timeline/exposure.ts';
import { pollText } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair, secondsOf, stamp, type Told } from '../../support/pair-facts.ts';

const line = { file: 'ro1.log', line: 1, text: '' };
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

describe('exposure', () => {
  const exposed = async (story: Told): Promise<readonly string[]> =>
    (await factsOfPair(story)).exposed.map(
      (e) => `${clockOf(e.from)}-${clockOf(e.to)} ${e.seconds} (${secondsOf(e)})`,
    );

  test('is the time without a ready partner, to the end of the log where it goes on', async () => {
    expect(await exposed([...begin, lost('10:10:00'), ready('10:14:00'), lost('10:30:00'), end])).toEqual([
      '10:10:00-10:14:00 240 (240)',
      '10:30:00-10:40:00 600 (600)',
    ]);
  });

  test('rests on the line that began it and the one that ended it', async () => {
    const { exposed: found } = await factsOfPair([
      ...begin,
      lost('10:10:00'),
      ready('10:14:00'),
      lost('10:30:00'),
      end,
    ]);
    expect(found.map((e) => e.evidence.map((l) => l.line))).toEqual([[4, 5], [6]]);
  });

  test('by a poll has bounds; what was not observed of it is not counted for certain', async () => {
    // Lost in (10:09:50, 10:10:00], ready in (10:29:50, 10:30:00]: 19 min 50 s to 20 min 10 s.
    const polled = (...gaps: readonly (readonly [string, string])[]): Told => ({
      'poll.csv': pollText(
        ['10:00:00', '10:40:00'],
        10,
        [['RO1', 'partner-ready', ['10:00:00', 'yes'], ['10:10:00', 'no'], ['10:30:00', 'yes']]],
        gaps,
      ),
    });
    expect(await exposed(polled())).toEqual(['10:10:00-10:30:00 1200 (1190-1210)']);
    // Not read from 10:15:00 to 10:25:00: ten minutes less for certain.
    expect(await exposed(polled(['10:15:10', '10:24:50']))).toEqual(['10:10:00-10:30:00 1200 (590-1210)']);
  });

  test('within a window is cut to it, and so are its bounds', () => {
    const at = (clock: string): number => stamp(clock).time;
    const spans = [
      {
        from: at('10:00:00'),
        to: at('10:10:00'),
        seconds: 600,
        low: 590,
        high: 610,
        evidence: [line] as const,
      },
      {
        from: at('10:20:00'),
        to: at('10:30:00'),
        seconds: 600,
        low: 590,
        high: 610,
        evidence: [line] as const,
      },
    ];
    const sum = (from: string, to: string): unknown => {
      const { seconds, low, high, spans: cut } = sumSpans({ unobserved: [] }, spans, at(from), at(to));
      return [seconds, low, high, ...cut.map((s) => `${clockOf(s.from)}-${clockOf(s.to)}`)];
    };
    expect(sum('09:00:00', '11:00:00')).toEqual([1200, 1180, 1220, '10:00:00-10:10:00', '10:20:00-10:30:00']);
    expect(sum('10:04:00', '10:22:00')).toEqual([480, 460, 500, '10:04:00-10:10:00', '10:20:00-10:22:00']);
    expect(sum('10:10:00', '10:20:00')).toEqual([0, 0, 0]);
    // Four minutes of it lie in the window: no more than the window holds.
    expect(sum('10:02:00', '10:06:00')).toEqual([240, 230, 240, '10:02:00-10:06:00']);
    expect(sum('10:09:55', '10:15:00')).toEqual([5, 0, 15, '10:09:55-10:10:00']);
  });
});

describe('exposure that nobody observed', () => {
  const at = (clock: string): number => stamp(clock).time;
  const unobserved = [{ from: at('10:05:00'), to: at('10:20:00'), evidence: [line] as const }];
  const lostFor = (from: string, to: string): Exposed => {
    const seconds = (at(to) - at(from)) / 1000;
    return { from: at(from), to: at(to), seconds, low: seconds, high: seconds, evidence: [line] };
  };
  const sum = (exposed: readonly Exposed[], from: string, to: string): unknown => {
    const { seconds, low, high } = sumSpans({ unobserved }, exposed, at(from), at(to));
    return [seconds, low, high];
  };

  test('is added to what it may have been at most, as far as it lies in the window', () => {
    // A quarter of an hour; ten minutes of it from 10:10 on.
    expect(sum([], '10:00:00', '10:30:00')).toEqual([0, 0, 900]);
    expect(sum([], '10:10:00', '10:30:00')).toEqual([0, 0, 600]);
    expect(sum([], '10:20:00', '10:30:00')).toEqual([0, 0, 0]);
  });

  test('is not added where it is part of a stretch that counts already', () => {
    // Lost from 10:00 to 10:15: of the unobserved quarter of an hour five minutes are left.
    expect(sum([lostFor('10:00:00', '10:15:00')], '10:00:00', '10:30:00')).toEqual([900, 900, 1200]);
    // No more than the window holds.
    expect(sum([lostFor('10:00:00', '10:15:00')], '10:00:00', '10:18:00')).toEqual([900, 900, 1080]);
  });
});

describe('availability', () => {
  test('is the share of the observed time with a ready partner', async () => {
    // Known from 10:00 to 10:40, lost for four minutes: 36 of 40.
    const { timeline } = await factsOfPair([...begin, lost('10:10:00'), ready('10:14:00'), end]);
    expect(availabilityOf(timeline)).toBe(0.9);
  });

  test('counts from the first word of readiness on', async () => {
    // Known from 10:20 on, lost for two minutes of twenty.
    const { timeline } = await factsOfPair([
      ...begin.slice(0, 2),
      ready('10:20:00'),
      lost('10:30:00'),
      ready('10:32:00'),
      end,
    ]);
    expect(availabilityOf(timeline)).toBe(0.9);
  });

  test('is not known where readiness was never logged, or only at the last instant', async () => {
    expect(availabilityOf((await factsOfPair([...begin.slice(0, 2), end])).timeline)).toBeNull();
    expect(
      availabilityOf((await factsOfPair([...begin.slice(0, 2), ready('10:40:00')])).timeline),
    ).toBeNull();
  });
});
