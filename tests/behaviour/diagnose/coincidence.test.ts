import { describe, expect, test } from 'vitest';
import { begins, unexplained } from '../../../src/diagnose/begins.ts';
import { coincidenceOf, sayCoincidence } from '../../../src/diagnose/coincidence.ts';
import { defaultDiagnoseLimits } from '../../../src/diagnose/limits.ts';
import { fleetOf, troubleOf } from '../../../src/diagnose/trouble.ts';
import { defaultRules } from '../../../src/timeline/rules.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

async function told(files: Readonly<Record<string, string>>): Promise<readonly [number, string]> {
  const { facts } = await analyseTexts(files);
  const [own] = facts;
  if (own === undefined) throw new Error('The files speak of no pair.');
  const trouble = troubleOf(own, fleetOf(facts, defaultRules), defaultDiagnoseLimits, defaultRules);
  if (trouble === null) throw new Error('The pair is healthy.');
  const found = coincidenceOf(trouble, begins(own.timeline, ['link-a'], 'down'));
  if (found === null) throw new Error('Nothing coincides.');
  return [found.expected, sayCoincidence(found, 'link a went down')];
}

/** A poll every five minutes from six to eight; the partner is lost between 06:55 and 07:00. */
const poll = Array.from({ length: 25 }, (_, index) => {
  const clock = `${String(6 + Math.floor(index / 12)).padStart(2, '0')}:${String((index % 12) * 5).padStart(2, '0')}`;
  return `2026-03-14T${clock}:00Z,RO1,partner-ready,${index < 12 ? 'yes' : 'no'}`;
});
const links = ['06:00:00  RO1 B  link a up', '06:59:40  RO1 B  link a down', '08:00:00  RO1 B  supply good'];

describe('failures that follow a change', () => {
  test('a coarse poll leaves open what came first: its bounds widen the window, and the sentence says so', async () => {
    const [expected, statement] = await told({
      'poll.csv': `time,unit,parameter,value\n${poll.join('\n')}\n`,
      'ro1.log': journalText(links.join('\n')),
    });
    // Looked at from 06:59:30 to 08:00: 3630 s. The window: 30 s, and 300 s that the poll leaves open.
    expect(expected).toBeCloseTo(330 / 3630, 6);
    expect(statement).toContain(
      '1 of 1 losses and failed attempts came, or may have come, within 30 s after',
    );
  });
  test('the coarsest failure widens the window for all', async () => {
    const sync = [
      '06:00:00  RO1 B  role standby',
      '07:05:00  RO1 B  sync start',
      '07:10:00  RO1 B  sync failed',
    ];
    const [expected] = await told({
      'poll.csv': `time,unit,parameter,value\n${poll.join('\n')}\n`,
      'ro1.log': journalText([...links, ...sync].sort().join('\n')),
    });
    // The loss, by a poll of 300 s, and the failed sync: two, at the share of the one window of 330 s.
    expect(expected).toBeCloseTo((2 * 330) / 3630, 6);
  });
  test('of which a removal is one are not counted: it was planned', async () => {
    const story = [
      '06:00:00 RO1 A role active',
      '06:00:00 RO1 B role standby',
      '06:00:00 RO1 partner ready',
      '07:00:00 RO1 B module removed',
      '07:00:00 RO1 partner not ready',
    ];
    const files = { 'ro1.log': journalText([...links, ...story].sort().join('\n')) };
    await expect(told(files)).rejects.toThrow('Nothing coincides.');
  });
  test('a journal tells to the second', async () => {
    const lost = ['06:00:00  RO1    partner ready', '07:00:00  RO1    partner not ready'];
    const [expected, statement] = await told({
      'ro1.log': journalText([...links, ...lost].sort().join('\n')),
    });
    expect(expected).toBeCloseTo(30 / 3630, 6);
    expect(statement).toContain('1 of 1 losses and failed attempts came within 30 s after');
  });
  test('counts what came up to 30 s after a change, and not before it', async () => {
    const story = (clock: string): Promise<readonly [number, string]> =>
      told({
        'ro1.log': journalText(
          [
            '06:00:00 RO1 partner ready',
            '07:00:00 RO1 partner not ready',
            '06:00:00 RO1 B link a up',
            `${clock} RO1 B link a down`,
            '08:00:00 RO1 B supply good',
          ]
            .sort()
            .join('\n'),
        ),
      });
    expect((await story('06:59:30'))[1]).toContain(
      '1 of 1 losses and failed attempts came within 30 s after link a went down',
    );
    expect((await story('07:00:00'))[1]).toContain('1 of 1 losses and failed attempts came within 30 s');
    await expect(story('06:59:29.999')).rejects.toThrow('Nothing coincides.');
    await expect(story('07:00:00.001')).rejects.toThrow('Nothing coincides.');
  });
});

describe('changes and failures in a storm', () => {
  const ready = ['06:00:00 RO1 partner ready', '06:00:00 RO1 B link a up', '08:00:00 RO1 B supply good'];
  const dips = (...clocks: readonly string[]): readonly string[] =>
    clocks.flatMap((c) => [`${c}:00 RO1 B link a down`, `${c}:10 RO1 B link a up`]);
  const story = (...lines: readonly string[]): Promise<readonly [number, string]> =>
    told({ 'ro1.log': journalText([...ready, ...lines].sort().join('\n')) });

  // The link dips at six of the ten minutes before: 6 * 30 s of 600 s. Of the hour before it is less, 180 of 3600 s.
  test('are compared with the minutes before, where the changes were as many', async () => {
    const [expected, statement] = await story(
      ...dips('06:50', '06:52', '06:54', '06:56', '06:58', '06:59'),
      '06:59:20 RO1 partner not ready',
    );
    expect(expected).toBeCloseTo(180 / 600, 6);
    expect(statement).toContain('1 of 1 losses and failed attempts came within 30 s');
  });
  test('with one change only are compared with all that is looked at', async () => {
    const [expected] = await story(...dips('06:59'), '06:59:20 RO1 partner not ready');
    // From 06:58:50 to 08:00: 3670 s, and the one window.
    expect(expected).toBeCloseTo(30 / 3670, 6);
  });
  test('one change before two failures counts once', async () => {
    const [, statement] = await story(
      ...dips('06:59'),
      '06:59:05 RO1 partner not ready',
      '06:59:10 RO1 B sync start',
      '06:59:15 RO1 B sync failed',
    );
    expect(statement).toContain('1 of 2 losses and failed attempts came within 30 s');
  });
});

describe('a change just before the log ends', () => {
  const lines = (last: string): string =>
    ['06:00:00 RO1 partner ready', '06:00:00 RO1 B link a up', last, '07:00:00 RO1 partner not ready'].join(
      '\n',
    );
  test('says little: its window counts in full, though the log cuts it short', async () => {
    // Looked at from 06:59:30 to 07:00:00: 30 s, and the 30 s of the window after that. The window is one half of it.
    const [expected] = await told({ 'ro1.log': journalText(lines('07:00:00 RO1 B link a down')) });
    expect(expected).toBeCloseTo(30 / 60, 6);
    // Ten seconds before: 10 s of the window lie within the log, and 20 s after it.
    const [before] = await told({ 'ro1.log': journalText(lines('06:59:50 RO1 B link a down')) });
    expect(before).toBeCloseTo(30 / 50, 6);
  });
  test('by stamps of whole seconds has a window wider by one on either side', async () => {
    const text = journalText(lines('07:00:00 RO1 B link a down')).replaceAll('.000Z', 'Z');
    // 1 s within the log and 31 s after it, of 30 s and 31 s.
    expect((await told({ 'ro1.log': text }))[0]).toBeCloseTo(32 / 61, 6);
  });
});

describe('changes that nothing else explains', () => {
  const left = async (...lines: readonly string[]): Promise<readonly string[]> => {
    const { facts } = await analyseTexts({
      'ro1.log': journalText(
        ['06:00:00 RO1 B link a up', ...lines, '08:00:00 RO1 B supply good'].sort().join('\n'),
      ),
    });
    const [own] = facts;
    if (own === undefined) throw new Error('The file speaks of no pair.');
    const { timeline } = own;
    const restarts = timeline.events.filter((e) => e.signal === 'restart');
    return unexplained(begins(timeline, ['link-a'], 'down'), timeline, restarts, defaultRules).map((e) =>
      new Date(e.time).toISOString().slice(11, 19),
    );
  };
  const down = '07:00:00 RO1 B link a down';

  test('are those with no removal, insertion or other change within 5 s, before or after', async () => {
    expect(await left(down)).toEqual(['07:00:00']);
    for (const what of ['module removed', 'module inserted', 'module restart']) {
      expect(await left(down, `06:59:55 RO1 B ${what}`)).toEqual([]);
      expect(await left(down, `07:00:05 RO1 B ${what}`)).toEqual([]);
      expect(await left(down, `06:59:54.999 RO1 B ${what}`)).toEqual(['07:00:00']);
      expect(await left(down, `07:00:05.001 RO1 B ${what}`)).toEqual(['07:00:00']);
    }
  });

  test('are each looked at by themselves', async () => {
    const twice = [down, '07:10:00 RO1 B link a up', '07:20:00 RO1 B link a down'];
    expect(await left(...twice, '07:20:01 RO1 B module restart')).toEqual(['07:00:00']);
    expect(await left(...twice, '06:50:00 RO1 B module restart')).toEqual(['07:00:00', '07:20:00']);
  });

  test('are looked for among all that happened, in whatever order it is told', async () => {
    expect(await left(down, '07:20:00 RO1 B module removed', '07:00:01 RO1 B module restart')).toEqual([]);
    expect(await left(down, '07:00:01 RO1 B module removed', '06:20:00 RO1 B module restart')).toEqual([]);
  });

  test('are no first readings', async () => {
    const { facts } = await analyseTexts({
      'poll.csv': `time,unit,parameter,value\n${['07:00:00', '07:00:10'].map((c) => `2026-03-14T${c}.0Z,RO1-B,link-a,down`).join('\n')}\n`,
    });
    expect(facts.flatMap((f) => begins(f.timeline, ['link-a'], 'down'))).toEqual([]);
  });
});
