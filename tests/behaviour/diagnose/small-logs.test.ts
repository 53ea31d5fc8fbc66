/** Small logs as a plant gave them, put through the command. */
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { steadypair } from '../../support/run-command.ts';

/** The exit status, and the answer that the command prints first, each sentence as long as it is. */
async function answerTo(name: string): Promise<{ status: number; answer: string; out: string }> {
  const { status, out } = await steadypair('diagnose', join('tests', 'fixtures', 'faults', name));
  return { status, answer: (out.split('\n\n')[0] ?? '').replaceAll('\n', ' '), out };
}

describe('a log of', () => {
  test('three losses, and a partner that has been ready since, says since when', async () => {
    const { status, answer, out } = await answerTo('ready-again.log');
    // Ready from 10:21:00 to the last line at 10:40:00.
    expect(answer).toMatch(
      /^RO1 has had a ready partner for the last 19 min 00 s; before that the partner was lost three times, from 10:10:00 on\. Since 10:10:00 no attempt was logged\./,
    );
    expect(out).not.toMatch(/come and gone|comes and goes/);
    // A cause is not found; the spell of flapping is a warning.
    expect(out).toContain('1  Too little data to name a cause (too-little-data)');
    expect(status).toBe(1);
  });

  test('failed syncs of a second while no half was active names that, and no fixed time', async () => {
    const { status, answer, out } = await answerTo('sync-failed.log');
    // The loss at 10:10:00, the last line at 10:11:10; four syncs, each failed one second after its start by whole-second stamps.
    // (4.5 / 5) to (0.5 / 2) is 3.6 to 1: 5.6 decibans and 10, 36 to 1.
    expect(answer).toMatch(
      /^RO1 has had no ready partner for 1 min 10 s, since 10:10:00; all 4 attempts in that time failed after about 1 s each; half B reached stage synchronising\. Most likely cause: no half was active when attempts failed \(36 to 1\)\./,
    );
    expect(out).toContain('1  No half was active when attempts failed (active-absent): strong, 36 to 1');
    expect(out.replace(/\s+/g, ' ')).toContain(
      'aborts-at-fixed-time 4 syncs failed after a median of about 1 s: the timestamps are too coarse to tell whether that time is fixed.',
    );
    expect(out).not.toMatch(/decisive|1000 to/);
    expect(status).toBe(1);
  });
});
