import { describe, expect, test } from 'vitest';
import { workSteps } from '../../../src/procedure/work-steps.ts';
import type { WorkStep } from '../../../src/vocabulary.ts';
import { factsOfPair } from '../../support/pair-facts.ts';
import { atRest, but, type Plan } from '../../support/swap-now.ts';

async function stepsOf(lines: readonly string[], plan: Plan = {}): Promise<readonly WorkStep[]> {
  const facts = await factsOfPair([...lines].sort());
  return workSteps(facts, [facts], plan, facts.timeline.to);
}
const rest = [...atRest, '08:56:00 RO1 A link a up'];
const said = (steps: readonly WorkStep[]): readonly string[] =>
  steps.map(
    (s) =>
      `${s.id}${s.half === null ? '' : ` ${s.half}`}${s.holdPoint === null ? '' : ` | ${s.holdPoint.id} ${s.holdPoint.status}`}`,
  );

describe('the steps of a work sheet', () => {
  test('without a plan are of both halves, the standby first, with a switchover between them', async () => {
    const half = (name: string, removal: string): readonly string[] => [
      `out ${name} | removal ${removal}`,
      ...['in', 'identified', 'reflash', 'synchronising', 'ready', 'steady'].map((id) => `${id} ${name}`),
    ];
    expect(said(await stepsOf(rest))).toEqual([
      'baseline',
      ...half('B', 'met'),
      'switchover B | switchover waiting',
      ...half('A', 'waiting'),
      'soak | leaving waiting',
    ]);
  });

  test('of one planned half are of that alone; one that is active is made standby first', async () => {
    expect(said(await stepsOf(rest, { B: {} })).slice(0, 2)).toEqual(['baseline', 'out B | removal met']);
    expect(said(await stepsOf(rest, { B: {} }))).toHaveLength(9);
    expect(said(await stepsOf(rest, { A: {} })).slice(0, 3)).toEqual([
      'baseline',
      'switchover B | switchover waiting',
      'out A | removal waiting',
    ]);
  });

  test('ask before the removal of the second half that the first has settled', async () => {
    const removals = (await stepsOf(rest)).flatMap((s) =>
      s.holdPoint?.id === 'removal' ? [s.holdPoint] : [],
    );
    expect(removals.map((h) => h.conditions.some((c) => c.id === 'first-settled'))).toEqual([false, true]);
  });

  test('name no half where no line says which is standby', async () => {
    const steps = await stepsOf(but(rest, 'role'));
    const dark = await stepsOf(but(but(rest, 'role'), 'light'));
    // A steady light is the standby's.
    expect(steps.find((s) => s.id === 'out')?.half).toBe('B');
    expect(dark.find((s) => s.id === 'out')?.half).toBeNull();
    expect(dark.find((s) => s.id === 'out')?.holdPoint?.status).toBe('waiting');
  });

  test('say how long it takes here: of the planned model and firmware, else of what runs', async () => {
    const history = [
      '08:05:00 RO1 B model Tern-2',
      '08:05:00 RO1 B firmware 6.2.0',
      '08:10:00 RO1 B reflash start',
      '08:12:00 RO1 B reflash end',
      '08:12:00 RO1 B firmware 6.4.1',
      '08:13:00 RO1 partner ready',
    ];
    const expected = async (plan: Plan): Promise<unknown> =>
      (await stepsOf([...history, ...rest], plan)).find((s) => s.id === 'ready' && s.half === 'B')?.expected;
    expect(await expected({ B: { model: 'Tern-2', firmware: '6.4.1' } })).toEqual({
      median: 60,
      p95: 60,
      n: 1,
    });
    expect(await expected({})).toEqual({ median: 60, p95: 60, n: 1 });
    expect(await expected({ B: { model: 'Tern-4', firmware: '6.4.1' } })).toBeNull();
  });
});
