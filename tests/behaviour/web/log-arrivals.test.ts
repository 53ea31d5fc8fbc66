import { describe, expect, test } from 'vitest';
import { arrivalsAfter, type HowTheyCame, noArrivals } from '../../../web/log-arrivals.ts';
import type { SiteModel } from '../../../web/protocol.ts';
import { exampleNow } from '../../support/example-swap-now.ts';
import { readPage } from '../../support/read-page.ts';

const site = await readPage(['10:00:00 RO1 A role active', '10:00:00 RO1 partner ready']);

/** What was read of RO1 up to an instant. */
function read(to: number, clock = 'logs/ro1.csv'): Pick<SiteModel, 'pairs' | 'now'> {
  const pairs = site.pairs.map((model) => ({ ...model, health: { ...model.health, to } }));
  return { pairs, now: [exampleNow({ clock })] };
}

function came(other: Partial<HowTheyCame> = {}): HowTheyCame {
  return { isLive: false, givenAt: 5000, modified: () => null, ...other };
}

describe('the newest row of a pair came', () => {
  test('nobody knows when, in files that were only chosen', () => {
    expect(arrivalsAfter(noArrivals, read(100), came()).get('RO1')).toEqual({ to: 100, arrivedAt: null });
  });

  test('when its file was written, where a folder is followed from now on, though not later than now', () => {
    const written = (at: number) => (file: string) => (file === 'logs/ro1.csv' ? at : null);
    const first = (at: number) => arrivalsAfter(noArrivals, read(100), came({ modified: written(at) }));
    expect(first(4000).get('RO1')?.arrivedAt).toBe(4000);
    expect(first(9000).get('RO1')?.arrivedAt).toBe(5000);
    const other = arrivalsAfter(noArrivals, read(100, 'ro9.csv'), came({ modified: written(4000) }));
    expect(other.get('RO1')?.arrivedAt).toBeNull();
  });

  test('with the files in which it was new, and stays so while nothing newer comes', () => {
    const live = came({ isLive: true, givenAt: 7000 });
    const first = arrivalsAfter(noArrivals, read(100), came());
    const second = arrivalsAfter(first, read(130), live);
    expect(second.get('RO1')).toEqual({ to: 130, arrivedAt: 7000 });
    const third = arrivalsAfter(second, read(130), { ...live, givenAt: 8000 });
    expect(third.get('RO1')).toEqual({ to: 130, arrivedAt: 7000 });
  });
});
