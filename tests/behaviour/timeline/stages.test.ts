import { describe, expect, test } from 'vitest';
import { attemptsOf } from '../../../src/timeline/attempts.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { stageAt } from '../../../src/timeline/stages.ts';
import { at } from '../../support/clean-swap.ts';
import { factsOfPair, secondsOf, whenOf } from '../../support/pair-facts.ts';

const end = '10:30:00 RO1 A light off';

/** How far half B is at 10:20, by what the journal says of it. */
async function stage(...lines: readonly string[]): Promise<string | null> {
  return stageAt((await factsOfPair([...lines, end])).timeline, 'B', at('10:20:00'), false);
}
const said = (what: string): string => `10:00:00 RO1 ${what}`;
const matched = [said('A firmware 6.4.1'), said('B firmware 6.4.1')];

describe('how far a half is', () => {
  test('nothing is known of it', async () => {
    expect(await stage(said('A role active'))).toBeNull();
  });

  test('absent: removed, without a role, or missed by its partner', async () => {
    expect(await stage(said('B module removed'))).toBe('absent');
    expect(await stage(said('B role none'))).toBe('absent');
    expect(await stage(said('partner absent'))).toBe('absent');
    expect(await stage('10:00:00 RO1 B module inserted', '10:05:00 RO1 B module removed')).toBe('absent');
  });

  test('not absent where it has no role, and its partner or its own identity shows that it is there', async () => {
    expect(await stage(said('B role none'), said('partner present'))).toBe('present');
    expect(await stage(said('B role none'), said('B serial T4-2'))).toBe('identified');
    expect(await stage(said('B role none'), said('B model Tern-4'))).toBe('identified');
  });

  test('present: inserted, or seen by its partner', async () => {
    expect(await stage(said('partner present'))).toBe('present');
    expect(await stage(said('B module inserted'))).toBe('present');
    expect(await stage('10:00:00 RO1 B module removed', '10:05:00 RO1 B module inserted')).toBe('present');
    expect(await stage('10:05:00 RO1 B module inserted', '10:05:00 RO1 B module removed')).toBe('present');
  });

  test('starting: its light is on, or it has the standby role', async () => {
    expect(await stage(said('B light flashing'))).toBe('starting');
    expect(await stage(said('B light steady'))).toBe('starting');
    expect(await stage(said('A role active'), said('B role standby'))).toBe('starting');
    expect(await stage(said('B module inserted'), said('B light off'))).toBe('present');
  });

  test('identified: it reports a model, a serial or a firmware that differs', async () => {
    expect(await stage(said('B model Tern-4'))).toBe('identified');
    expect(await stage(said('B serial T4-2'))).toBe('identified');
    expect(await stage(said('B firmware 6.4.1'))).toBe('identified');
    expect(await stage(said('B firmware 6.2.0'), said('A firmware 6.4.1'), said('B light flashing'))).toBe(
      'identified',
    );
  });

  test('firmware aligned, and synchronising once the light flashes', async () => {
    expect(await stage(...matched)).toBe('firmware-aligned');
    expect(await stage(...matched, said('B light steady'))).toBe('firmware-aligned');
    expect(await stage(...matched, said('B light flashing'))).toBe('synchronising');
  });

  test('ready, and steady', async () => {
    expect(await stage(said('partner ready'))).toBe('ready');
    expect(await stage(said('partner ready'), said('B light flashing'))).toBe('ready');
    expect(await stage(said('partner ready'), said('B light steady'))).toBe('steady');
  });
});

describe('the ladder of an attempt', () => {
  const climb = async (...lines: readonly string[]): Promise<readonly string[]> => {
    const { timeline, bringUps } = await factsOfPair([...lines, end]);
    const [first] = attemptsOf(timeline, bringUps, defaultRules);
    return (first?.stages ?? []).map(
      (s) => `${whenOf(s.entered)} ${s.stage} ${secondsOf(s.inStage)} ${s.evidence.map((line) => line.line)}`,
    );
  };

  test('has every stage that it reached, when, for how long, and the line that says so', async () => {
    const story = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1 A firmware 6.4.1',
      '10:10:00 RO1 B module removed',
      '10:10:00 RO1 B role none',
      '10:12:00 RO1 B module inserted',
      '10:12:10 RO1 B role standby',
      '10:12:20 RO1 B model Tern-4',
      '10:12:40 RO1 B firmware 6.4.1',
      '10:12:50 RO1 B light flashing',
      '10:13:40 RO1   partner ready',
      '10:15:00 RO1 B light steady',
    ];
    // A ready standby is watched for its light for five minutes on, to 10:18:40.
    expect(await climb(...story)).toEqual([
      '10:12:00 present 10 5',
      '10:12:10 starting 10 6',
      '10:12:20 identified 20 7',
      '10:12:40 firmware-aligned 10 8',
      '10:12:50 synchronising 50 9',
      '10:13:40 ready 80 10',
      '10:15:00 steady 220- 11',
    ]);
  });

  test('is synchronising from the logged start of a sync on, whatever the firmware', async () => {
    const story = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1 A firmware 6.4.1',
      '10:00:00 RO1 B firmware 6.2.0',
      '10:00:00 RO1   partner not ready',
      '10:10:00 RO1 B module restart',
      '10:11:00 RO1 B sync start',
      '10:14:00 RO1 B sync failed',
    ];
    expect(await climb(...story)).toEqual(['10:10:00 identified 60 5', '10:11:00 synchronising 180- 6']);
  });

  test('is never climbed down: what was reached stays reached', async () => {
    const story = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1 B role standby',
      '10:00:00 RO1   partner not ready',
      '10:10:00 RO1 B module restart',
      '10:11:00 RO1 B model Tern-4',
      '10:12:00 RO1 B role none',
      '10:13:00 RO1 B role standby',
      '10:14:00 RO1 B sync failed',
    ];
    // A sync that failed had begun, by its own line if no other says so.
    expect(await climb(...story)).toEqual([
      '10:10:00 starting 60 4',
      '10:11:00 identified 180 5',
      '10:14:00 synchronising 0- 8',
    ]);
  });

  test('of a ready standby is watched to the loss, if that comes before its five minutes', async () => {
    const story = [
      '10:00:00 RO1 A role active',
      '10:00:00 RO1   partner not ready',
      '10:10:00 RO1 B module restart',
      '10:12:00 RO1   partner ready',
      '10:14:00 RO1   partner not ready',
    ];
    expect((await climb(...story)).at(-1)).toBe('10:12:00 ready 120- 4');
  });
});
