import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse, fleet } from '../../src/pipeline.ts';
import type { Fleet, SourceLine } from '../../src/vocabulary.ts';
import { readTexts } from '../support/read-text.ts';
import { bySite, journalsOf } from '../support/site-journals.ts';

const question = { by: 'firmware', swaps: 10 } as const;

async function review(files: Readonly<Record<string, string>>): Promise<Fleet> {
  return fleet(analyse(await readTexts(files, { phrasebook: bySite })), question);
}

function filesOf(site: string, seed: number, count: number): Readonly<Record<string, string>> {
  return Object.fromEntries(
    journalsOf(site, seed, count).map((text, index) => [`${site}-${index}.csv`, text]),
  );
}

/** What lines say, without file and number: those of a shuffled file have other numbers, those of a file read twice two names. */
function textsOf(lines: readonly SourceLine[]): readonly string[] {
  return [...new Set(lines.map((l) => l.text))].sort();
}

/** Everything of a review, and what the lines say that it rests on. */
function figuresOf({ pairs, groups, logRank, forecast, drifts, months, census, attempts }: Fleet): unknown {
  return {
    pairs: pairs.map(({ flapping, evidence, readiness, ...pair }) => ({
      ...pair,
      flapping: flapping.length,
      evidence: textsOf(evidence),
      readiness: { ...readiness, evidence: textsOf(readiness.evidence) },
    })),
    attempts: attempts.map(({ pair, start, sync, outcome }) => ({ pair, start, sync, outcome })),
    ...{ groups, logRank, forecast, drifts, months, census },
  };
}

describe('a fleet', () => {
  test('is the same whatever the order of rows and files', async () => {
    const files = filesOf('Gull', 7, 3);
    const plain = figuresOf(await review(files));
    await fc.assert(
      fc.asyncProperty(fc.infiniteStream(fc.nat()), async (numbers) => {
        const shuffled = Object.entries(files).map(([name, text]) => {
          const [head = '', ...rows] = text.trimEnd().split(/\r?\n/);
          const keyed = rows.map((row) => ({ row, key: numbers.next().value ?? 0 }));
          const mixed = keyed.sort((a, b) => a.key - b.key).map(({ row }) => row);
          return [name, `${[head, ...mixed].join('\n')}\n`] as const;
        });
        const reversed = Object.fromEntries([...shuffled].reverse());
        expect(figuresOf(await review(reversed))).toEqual(plain);
      }),
      { numRuns: 6, seed: 3 },
    );
  }, 60_000);

  test('of two sites is both of them: each pair as alone, counts added up', async () => {
    const [gull, tern] = [filesOf('Gull', 11, 4), filesOf('Tern', 12, 4)];
    const [one, two, both] = [await review(gull), await review(tern), await review({ ...gull, ...tern })];
    const own = ({ pairs }: Fleet, site: string): unknown =>
      pairs
        .map(({ pair, losses, observedSeconds, ratePerYear, availability, trend, readiness }) => ({
          pair: pair.replace(` at ${site}`, ''),
          ...{ losses, observedSeconds, ratePerYear, availability, trend, readiness },
        }))
        .sort((a, b) => (a.pair < b.pair ? -1 : 1));
    const at = (site: string): Fleet => ({ ...both, pairs: both.pairs.filter((p) => p.site === site) });
    expect(own(at('Gull'), 'Gull')).toEqual(own(one, ''));
    expect(own(at('Tern'), 'Tern')).toEqual(own(two, ''));
    for (const { group, cause, attempts, censored } of both.groups) {
      const parts = [one, two].flatMap((f) => f.groups.filter((g) => g.group === group && g.cause === cause));
      expect(attempts).toBe(parts.reduce((sum, g) => sum + g.attempts, 0));
      expect(censored).toBe(parts.reduce((sum, g) => sum + g.censored, 0));
    }
    expect(both.attempts).toHaveLength(one.attempts.length + two.attempts.length);
  });

  test('of the same exports twice counts nothing twice', async () => {
    const files = filesOf('Gull', 7, 2);
    const again = Object.fromEntries(Object.entries(files).map(([name, text]) => [`again-${name}`, text]));
    expect(figuresOf(await review({ ...files, ...again }))).toEqual(figuresOf(await review(files)));
  });
});
