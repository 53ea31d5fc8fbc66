import { describe, expect, test } from 'vitest';
import { availabilityOf, type Exposed, sumSpans } from '../../../src/timeline/exposure.ts';
import { pollText } from '../../support/clean-swap.ts';
import { clockOf, factsOfPair, secondsOf, stamp, type Told } from '../../support/pair-facts.ts';

const line = { file: 'ro1.log', line: 1, text: '' };
const begin = ['10:00:00 RO1 A role active', '10:00:00 RO1 B role standby', '10:00:00 RO1 partner ready'];
const end = '10:40:00 RO1 A light off';
const lost = (clock: string): string => `${clock} RO1 partner not ready`;
const ready = (clock: string): string => `${clock} RO1 partner ready`;

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
