/** Fleets in which losses come by chance, in bursts or in storms, and nothing brings them: a short form of the calibration study. */
import { describe, expect, test } from 'vitest';
import { seeded } from '../../samples/random.ts';
import { coincidence } from '../../src/analyze/coincidence.ts';
import { defaultLimits } from '../../src/analyze/limits.ts';
import { rhythm } from '../../src/analyze/rhythm.ts';
import { runAnalyzers } from '../../src/analyze/run-analyzers.ts';
import { factsOf } from '../../src/timeline/facts.ts';
import { characters, madeFleet } from '../calibration/made-fleets.ts';

describe.each(characters)('of 60 sound fleets with %s losses', (character) => {
  // One in a hundred is promised: 0.6 of 60, and three standard errors of 0.77 above it 2.9.
  test('at most two have a word on a rhythm or on what comes before the losses, and none fails', () => {
    const random = seeded(20_261_129);
    const answers = Array.from({ length: 60 }, () => {
      const facts = factsOf(madeFleet(random, { character, pairs: 3, years: 1 }), defaultLimits.rules);
      return runAnalyzers([coincidence, rhythm], facts, defaultLimits);
    });
    expect(answers.flat().flatMap((a) => a.failed ?? [])).toEqual([]);
    expect(answers.flat().some((a) => a.analyzer === 'coincidence' && a.checked > 0)).toBe(true);
    for (const { meta } of [coincidence, rhythm]) {
      const told = answers.filter((own) => own.some((a) => a.analyzer === meta.id && a.findings.length > 0));
      expect([meta.id, told.length <= 2]).toEqual([meta.id, true]);
    }
  });
});
