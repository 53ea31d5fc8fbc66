import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { fileFigures } from '../../../src/analyze/file-figures.ts';
import { offsetFindings } from '../../../src/analyze/notices.ts';
import { type Analysed, verify } from '../../../src/pipeline.ts';
import type { Finding, Swap } from '../../../src/vocabulary.ts';
import { eventLine, secondsOf } from '../../support/pair-facts.ts';
import { analyseTexts } from '../../support/read-text.ts';
import { steadypair } from '../../support/run-command.ts';

const folder = join('tests', 'fixtures', 'faults');
const read = (...names: readonly string[]): Promise<Analysed> =>
  analyseTexts(Object.fromEntries(names.map((name) => [name, readFileSync(join(folder, name), 'utf8')])));

function swapsOf(analysed: Analysed, pair: string | null = null): readonly Swap[] {
  return verify(analysed, pair, { from: null, to: null }, null).swaps;
}
async function onlySwap(...names: readonly string[]): Promise<Swap> {
  const [swap, ...others] = swapsOf(await read(...names), 'RO1');
  if (swap === undefined || others.length > 0) throw new Error('There is not just one swap.');
  return swap;
}
/** How a check came out, and what it says. */
const check = ({ checks }: Swap, id: string): string => {
  const found = checks.find((c) => c.id === id);
  return `${found?.status}: ${found?.statement}`;
};
const failed = ({ checks }: Swap): readonly string[] =>
  checks.filter((c) => c.status === 'fail').map((c) => c.id);
const findings = ({ findings: all }: Analysed, ...ids: readonly string[]): readonly string[] =>
  all.filter((f: Finding) => ids.includes(f.id)).map((f) => `${f.id}: ${f.statement}`);

describe('roles that no line states', () => {
  test('half A left the active role for 160 s: no half was active, and half B was not', async () => {
    const analysed = await read('none-active.log');
    const [facts] = analysed.facts;
    expect(facts?.timeline.events.filter((e) => e.half === 'B').map((e) => e.value)).toEqual(['standby']);
    // Stamps of whole seconds: a second less, a second more.
    expect(facts?.conflicts.map((c) => `${c.kind} ${c.seconds} (${secondsOf(c)})`)).toEqual([
      'none-active 160 (159-161)',
    ]);
    expect(facts?.switchovers).toEqual([]);
    expect(findings(analysed, 'none-active', 'two-active')).toEqual([
      'none-active: Neither half was active for 2 min 39 s to 2 min 41 s.',
    ]);
  });

  test('half A took the active role back while half B had it: both for 10 s, and one switchover', async () => {
    const analysed = await read('two-active.log');
    const [facts] = analysed.facts;
    expect(facts?.conflicts.map((c) => `${c.kind} ${c.seconds} (${secondsOf(c)})`)).toEqual([
      'none-active 3 (2-4)',
      'two-active 10 (9-11)',
    ]);
    expect(facts?.switchovers.map((s) => `${s.fromHalf}>${s.toHalf} ${secondsOf(s.gapSeconds)}`)).toEqual([
      'A>B 2-4',
    ]);
    expect(findings(analysed, 'two-active')).toEqual([
      'two-active: Both halves were active for 9.0 s to 11 s.',
    ]);
  });
});

describe('what each half says of the other at its own time', () => {
  test('measures no clock, and leaves no log out', async () => {
    const analysed = await read('nodes/node-a.log', 'nodes/node-b.log');
    expect(analysed.offsets.map((o) => [o.file, o.ahead])).toEqual([['nodes/node-b.log', null]]);
    expect(
      offsetFindings(fileFigures(analysed.files, analysed.offsets), false).map((f) => [
        f.severity,
        f.statement,
      ]),
    ).toEqual([
      [
        'info',
        'nodes/node-b.log: its clock offset to nodes/node-a.log could not be measured: no change could be found in both. Both were used as they are.',
      ],
    ]);
    const [facts] = analysed.facts;
    const lost = facts?.losses.map((l) => eventLine(l.event).split(' ')[0]);
    // Three of half A's log and two of half B's, each at its own stamp.
    expect(lost).toEqual(['10:30:00', '10:34:00', '11:30:00', '11:35:00', '12:30:00']);
    expect(analysed.files.map((f) => [f.input.rows.read, f.input.rows.used])).toEqual([
      [9, 9],
      [9, 9],
    ]);
  });
});

describe('a partner that was absent', () => {
  test('for 2 min 41 s makes no swap', async () => {
    const analysed = await read('present.log');
    expect(swapsOf(analysed)).toEqual([]);
    const [facts] = analysed.facts;
    expect(facts?.absences.map(({ gone, back }) => ((back?.time ?? 0) - gone.time) / 1000)).toEqual([161]);
    expect(facts?.moduleChanges).toEqual([]);
  });
});

describe('a log of another pair', () => {
  test('in which a command stands says nothing of the switchovers of this one', async () => {
    const poll = '01-unrelated-command/ro1-poll.csv';
    const alone = await onlySwap(poll);
    const beside = await onlySwap(poll, '01-unrelated-command/zz9-journal.csv');
    expect(failed(beside)).toEqual([]);
    expect(check(beside, 'switchover-commanded')).toBe(
      'not-observed: No log that records switchover commands names this pair.',
    );
    expect(beside).toEqual(alone);
  });
});

describe('a poll', () => {
  test('whose first steady light may have held or not leaves the limit open from there on', async () => {
    const swap = await onlySwap('02-light-not-surely-held/ro1-poll.csv');
    // The serial is blank at 08:59:19, after 08:57:49, and new at 09:00:49: so inserted in between. The light is steady at
    // 09:05:19, after 09:03:49, not at 09:06:49, and steady for good at 09:08:19. From 09:00:49 to 09:03:49 are 3 min, from
    // 08:57:49 to 09:08:19 10 min 30 s; stamps of whole seconds: a second less, a second more.
    expect(check(swap, 'light-steady')).toBe(
      'inconclusive: The light of half B was steady after 2 min 59 s to 10 min 31 s; the limit is 5 min 00 s.',
    );
    expect(failed(swap)).toEqual([]);
  });

  test('that was not read for a quarter of an hour says nothing bad of that time', async () => {
    const swap = await onlySwap('05-gap-counted-as-bad/ro1-poll.csv');
    expect(check(swap, 'light-steady')).toMatch(
      /^inconclusive: .* It was not observed for 14 min 00 s of that time\.$/,
    );
    expect(failed(swap)).toEqual([]);
    expect(swap.verdict).toBe('inconclusive');
  });

  test.each(['b.csv', 'b-one-poll-earlier.csv'])(
    'that begins in the middle of another, %s, does not widen what the other saw',
    async (second) => {
      const switchovers = async (...names: readonly string[]): Promise<readonly string[]> =>
        (await read(...names.map((name) => `04-overlap-widens/${name}`))).facts.flatMap((f) =>
          f.switchovers.map((s) => `${(s.at.time - s.at.earliest) / 1000} s ${s.fromHalf}>${s.toHalf}`),
        );
      expect(await switchovers('a.csv')).toEqual(['60 s A>B']);
      expect(await switchovers('a.csv', second)).toEqual(['60 s A>B']);
    },
  );
});

describe('a log that ends just when the partner is ready', () => {
  test('is of a swap that is open: half an hour with a ready partner is awaited', async () => {
    const swap = await onlySwap('03-soaked-log-ends-early/ro1-journal.csv');
    expect(swap.verdict).toBe('inconclusive');
    expect(failed(swap)).toEqual([]);
    expect([swap.open?.awaits, swap.open?.holdPoint]).toEqual(['soak', 'waiting']);
    expect(swap.statement).toBe(
      'The swap of pair RO1 is still open: half B was replaced. Waiting for a ready partner without a break for 30 minutes: less than 1 s so far.',
    );
  });
});

describe('two pairs whose names differ in capitals only', () => {
  test('get reports whose names differ on any disk', async () => {
    const out = mkdtempSync(join(tmpdir(), 'reports-'));
    const files = ['case1.csv', 'case2.csv'].map((name) => join(folder, '07-case-collision', name));
    const book = join(folder, '07-case-collision', 'any.yaml');
    const { status } = await steadypair('verify', ...files, '--phrasebook', book, '--out', out);
    expect(status).toBe(0);
    const names = readdirSync(out);
    // HTML and Markdown of each, and one JSON document.
    expect(names).toHaveLength(5);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(5);
    const verdicts = names
      .filter((name) => name.endsWith('.md'))
      .map((name) => /Pair (\S+) is verified/.exec(readFileSync(join(out, name), 'utf8'))?.[1]);
    expect(verdicts.sort()).toEqual(['RO1', 'ro1']);
  });
});
