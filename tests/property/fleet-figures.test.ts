/** A review rests on figures alone: read back from a file, or made a site at a time, they give the same to the byte. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fleetFrom, type PairPlan, tellFleet } from '../../samples/fleet.ts';
import { journalOf } from '../../samples/fleet-files.ts';
import { defaultLimits } from '../../src/limits.ts';
import { analyse, briefly, figuresOf, fleet, reviewInBrief, reviewSites } from '../../src/pipeline.ts';
import { fleetJson } from '../../src/report/fleet-json.ts';
import { fleetText } from '../../src/report/fleet-text.ts';
import type { Fleet, SiteFigures } from '../../src/vocabulary.ts';
import { figuresBytes, readBack } from '../support/figures-read-back.ts';
import { readTexts } from '../support/read-text.ts';
import { bySite } from '../support/site-journals.ts';

const dayMs = 86_400_000;
const question = { by: 'firmware', swaps: 10 } as const;
const ofSites = { ...question, limits: defaultLimits, align: false };

type Files = Readonly<Record<string, string>>;

const planOf = fc.record({
  lossesPerYear: fc.integer({ min: 0, max: 14 }),
  growth: fc.constantFrom(1, 2),
  reflashedAt: fc.constantFrom(null, Date.UTC(2025, 7, 5, 9)),
  swappedAt: fc.constantFrom(null, Date.UTC(2025, 9, 2, 9)),
});
/** Sites with pairs of the same names, each watched for its own number of days. */
const sitesOf = fc.uniqueArray(
  fc.record({
    site: fc.constantFrom('Gull', 'Marrow', 'Tern'),
    seed: fc.integer({ min: 1, max: 1000 }),
    days: fc.integer({ min: 2, max: 700 }),
    plans: fc.array(planOf, { minLength: 1, maxLength: 3 }),
  }),
  { minLength: 1, maxLength: 3, selector: ({ site }) => site },
);
type Site = Parameters<Parameters<(typeof sitesOf)['map']>[0]>[0][number];

function journals({ site, seed, days, plans }: Site): Files {
  const named = plans.map((plan, index): PairPlan => ({ ...plan, pair: `RO${index + 1}` }));
  const end = new Date(fleetFrom + days * dayMs).toISOString();
  return Object.fromEntries(
    tellFleet(named, seed).map((told, index) => {
      const rows = journalOf(told).split('\n');
      const kept = rows.filter((row) => row < end || row.startsWith('time'));
      return [`${site}-${index}.csv`, kept.join('\n').replaceAll(/^(\d[^,]*),/gm, `$1,${site}/`)];
    }),
  );
}

async function figures(files: Files): Promise<SiteFigures> {
  return figuresOf(await readTexts(files, { phrasebook: bySite }));
}

async function whole(files: Files): Promise<Fleet> {
  return fleet(analyse(await readTexts(files, { phrasebook: bySite })), question);
}

const shown = { zone: 'UTC', paint: (text: string) => text, reports: [] };

describe('the review of random fleets', () => {
  test('is the same from figures that were read back, a site at a time, and all at once', async () => {
    await fc.assert(
      fc.asyncProperty(sitesOf, async (sites) => {
        const each = sites.map(journals);
        const all = await whole(Object.assign({}, ...each));
        const own = await Promise.all(each.map(figures));
        const back = await readBack(figuresBytes(own));
        expect(fleetJson(reviewSites(own, ofSites))).toBe(fleetJson(all));
        expect(fleetJson(reviewSites(back, ofSites))).toBe(fleetJson(all));
        const brief = reviewInBrief(back.map(briefly()), ofSites);
        expect(fleetText(brief, shown)).toBe(fleetText(all, shown));
      }),
      { numRuns: 3, seed: 11 },
    );
  }, 300_000);

  test('does not depend on the order of the sites, but for the order in which files are listed', async () => {
    await fc.assert(
      fc.asyncProperty(sitesOf, async (sites) => {
        const own = await Promise.all(sites.map((site) => figures(journals(site))));
        const { inputs, ...one } = reviewSites(own, ofSites);
        const { inputs: others, ...other } = reviewSites([...own].reverse(), ofSites);
        expect(other).toEqual(one);
        expect(new Set(others)).toEqual(new Set(inputs));
      }),
      { numRuns: 2, seed: 12 },
    );
  }, 300_000);
});

describe('the figures of any log that can be read', () => {
  const fixtures = join('tests', 'fixtures');
  const names = readdirSync(fixtures, { recursive: true, encoding: 'utf8' }).filter((n) =>
    /\.(csv|log|txt)$/.test(n),
  );
  test.each(names)('give the same review once they are read back: %s', async (name) => {
    const read = await readTexts(
      { [name]: readFileSync(join(fixtures, name)) },
      { year: 2026, order: 'day-first' },
    );
    const back = await readBack(figuresBytes([figuresOf(read)]));
    expect(fleetJson(reviewSites(back, ofSites))).toBe(fleetJson(fleet(analyse(read), question)));
  });
});
