import { describe, expect, test } from 'vitest';
import { procedure } from '../../../src/procedure/procedure.ts';
import type { PlannedModule, ProcedureStepId } from '../../../src/vocabulary.ts';
import { pollText } from '../../support/clean-swap.ts';
import { before, until, work } from '../../support/open-swaps.ts';
import { factsOfPair, type Told, whenOf } from '../../support/pair-facts.ts';

const { out, in: inserted, identified, oldFirmware, reflash, ready, steady } = work;

/** How a step of the work on the half that was removed first stands where the log ends, and on how many lines that rests. */
async function state(id: ProcedureStepId, told: Told, plan?: PlannedModule): Promise<string> {
  const facts = await factsOfPair(told);
  const change = facts.moduleChanges[0];
  const step = procedure.find((s) => s.id === id);
  if (change === undefined || step === undefined) throw new Error('There is no such work.');
  const bringUp = facts.bringUps.findLast((b) => b.half === change.half) ?? null;
  const found = step.stateOf({ facts, change, bringUp, plan, at: facts.timeline.to });
  return found.kind === 'none' ? 'none' : `${found.kind} since ${whenOf(found.since)}`;
}
const of = (id: ProcedureStepId, ...lines: readonly string[]): Promise<string> =>
  state(id, [...before, ...lines, until('09:15:00')].sort());

describe('the steps of the work on a half', () => {
  test('are in the order of the work, with their limits', () => {
    // Source of the limits: design.md, section 5.
    expect(procedure.map((s) => [s.id, s.limitSeconds])).toEqual([
      ['in', 900],
      ['identified', 900],
      ['reflash', 900],
      ['ready', 900],
      ['steady', 300],
    ]);
  });

  test('say what they wait for, and what is so once they are done', () => {
    expect(procedure.map((s) => s.says('B'))).toEqual([
      'a module in half B',
      'the new module in half B to report its identity',
      'half B to run the right firmware',
      'half B to be ready',
      'the light of half B to be steady',
    ]);
    expect(procedure.map((s) => s.saysDone('B'))).toEqual([
      'A module is in half B.',
      'The new module in half B reports its identity.',
      'Half B runs the right firmware.',
      'Half B is the ready partner.',
      'The light of half B is steady.',
    ]);
  });
});

describe('in', () => {
  test('waits from the removal on, and is done with the insertion', async () => {
    expect(await of('in', ...out)).toBe('waiting since 09:00:00');
    expect(await of('in', ...out, ...inserted)).toBe('done since 09:02:00');
  });
});

describe('identified', () => {
  test('has no place before a module is in; then waits for its first word', async () => {
    expect(await of('identified', ...out)).toBe('none');
    expect(await of('identified', ...out, ...inserted)).toBe('waiting since 09:02:00');
  });

  test('is done with a serial, a model, a firmware or a role; with the first of them', async () => {
    for (const word of ['serial T4-2', 'model Tern-4', 'firmware 6.4.1', 'role standby'])
      expect(await of('identified', ...out, ...inserted, `09:03:00 RO1 B ${word}`)).toBe(
        'done since 09:03:00',
      );
    expect(await of('identified', ...out, ...inserted, ...identified, '09:02:20 RO1 B role standby')).toBe(
      'done since 09:02:20',
    );
  });

  test('is not done with a role that says that nothing is there, nor with what the old module said', async () => {
    const last = '08:59:59 RO1 B serial T4-1';
    expect(await of('identified', last, ...out, ...inserted, '09:03:00 RO1 B role none')).toBe(
      'waiting since 09:02:00',
    );
  });

  test('by a poll is done with the reading that has the new serial, with its bounds', async () => {
    const poll = pollText(['08:40:00', '09:30:00'], 10, [
      ['RO1-B', 'serial', ['08:40:00', 'T4-1'], ['09:00:00', ''], ['09:02:00', 'T4-2']],
    ]);
    expect(await state('identified', { 'poll.csv': poll })).toBe('done since 09:01:50..09:02:00');
  });
});

describe('reflash', () => {
  const arrived = [...out, ...inserted, ...identified, ...oldFirmware];

  test('has no place before the firmware of both halves is known', async () => {
    expect(await of('reflash', ...out, ...inserted, ...identified)).toBe('none');
    const unknown = [...before, ...arrived, until('09:15:00')].filter((line) => !line.includes('A firmware'));
    expect(await state('reflash', unknown.sort())).toBe('none');
  });

  test('waits for the firmware of the other half, from the first word of the new module on', async () => {
    expect(await of('reflash', ...arrived)).toBe('waiting since 09:02:30');
    expect(await of('reflash', ...arrived, '09:06:00 RO1 B firmware 6.4.1')).toBe('done since 09:06:00');
  });

  test('waits from a logged start to a logged end, though the firmware is the same already', async () => {
    const same = [...out, ...inserted, ...identified, '09:02:40 RO1 B firmware 6.4.1'];
    expect(await of('reflash', ...same)).toBe('done since 09:02:40');
    expect(await of('reflash', ...same, '09:03:00 RO1 B reflash start')).toBe('waiting since 09:03:00');
    expect(await of('reflash', ...arrived, ...reflash)).toBe('done since 09:05:10');
  });

  test('goes by the plan where there is one', async () => {
    const told = [...before, ...arrived, until('09:15:00')].sort();
    expect(await state('reflash', told, { firmware: '6.2.0' })).toBe('done since 09:02:40');
    expect(await state('reflash', told, { firmware: '6.5.0' })).toBe('waiting since 09:02:30');
  });
});

describe('ready', () => {
  const arrived = [...out, ...inserted, ...identified, ...oldFirmware, ...reflash];

  test('has no place before a start, nor where readiness is never logged', async () => {
    expect(await of('ready', ...out)).toBe('none');
    const silent = [...before, ...arrived, until('09:15:00')].filter((line) => !line.includes('partner'));
    expect(await state('ready', silent.sort())).toBe('none');
  });

  test('waits from the last start on, and is done while the partner is ready', async () => {
    expect(await of('ready', ...arrived)).toBe('waiting since 09:05:00');
    expect(await of('ready', ...arrived, ...ready)).toBe('done since 09:07:00');
    expect(await of('ready', ...arrived, ...ready, '09:07:30 RO1 partner not ready')).toBe(
      'waiting since 09:05:00',
    );
  });

  test('stays done once it has held', async () => {
    expect(await of('ready', ...arrived, ...ready, '09:12:00 RO1 partner not ready')).toBe(
      'done since 09:07:00',
    );
  });
});

describe('steady', () => {
  const arrived = [...out, ...inserted, ...identified, ...oldFirmware, ...reflash, ...ready];

  test('has no place where the light is never logged', async () => {
    const dark = [...before, ...arrived, until('09:15:00')].filter((line) => !line.includes('light'));
    expect(await state('steady', dark.sort())).toBe('none');
  });

  test('waits from the last start on, and is done while the light is steady', async () => {
    expect(await of('steady', ...arrived)).toBe('waiting since 09:05:00');
    expect(await of('steady', ...arrived, ...steady)).toBe('done since 09:09:00');
    expect(await of('steady', ...arrived, ...steady, '09:09:30 RO1 B light flashing')).toBe(
      'waiting since 09:05:00',
    );
  });

  test('stays done once it has held', async () => {
    expect(await of('steady', ...arrived, ...steady, '09:12:00 RO1 B light flashing')).toBe(
      'done since 09:05:00',
    );
  });
});
