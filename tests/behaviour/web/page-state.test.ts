import { describe, expect, test } from 'vitest';
import type { AttentionKind } from '../../../src/vocabulary.ts';
import { readAddress } from '../../../web/address.ts';
import { noArrivals } from '../../../web/log-arrivals.ts';
import { firstChosen, firstView, fitAddress, neededView, worstFor } from '../../../web/page-state.ts';
import { sayAsked, titleOf } from '../../../web/page-title.ts';
import { readPage } from '../../support/read-page.ts';

const begin = ['RO1', 'RO2', 'RO3'].flatMap((pair) => [
  `10:00:00 ${pair} A role active`,
  `10:00:00 ${pair} B role standby`,
  `10:00:00 ${pair} partner ready`,
  `10:00:00 ${pair} B serial T4-1`,
  `11:00:00 ${pair} A light off`,
]);
const swapped = [
  '10:20:00 RO1 B module removed',
  '10:20:00 RO1 partner not ready',
  '10:22:00 RO1 B module inserted',
  '10:22:00 RO1 B role standby',
  '10:22:00 RO1 B serial T4-2',
  '10:25:00 RO1 partner ready',
];
const site = await readPage([...begin, ...swapped, '10:30:00 RO3 partner not ready']);

const views = [
  { id: 'swap', title: 'Swap record' },
  { id: 'fleet', title: 'Fleet' },
];

describe('what a view shows before a pair is chosen', () => {
  test('is the worst pair that it can say something of, with its last swap', () => {
    expect(site.attention.map((a) => a.pair)[0]).toBe('RO3');
    expect(worstFor(site, 'pairs').pair).toBe('RO3');
    expect(worstFor(site, 'diagnosis').pair).toBe('RO3');
    expect(worstFor(site, 'swap')).toEqual({ pair: 'RO1', swap: 0 });
  });

  test('is nothing where no file names a pair', () => {
    expect(worstFor({ ...site, pairs: [], attention: [] }, 'swap')).toEqual({ pair: '', swap: 0 });
  });

  test('of Swap now is the pair with the latest step, or the only pair there is; else none', () => {
    expect(worstFor(site, 'now')).toEqual({ pair: 'RO1', swap: 0 });
    const idle = { ...site, now: [] };
    expect(worstFor(idle, 'now').pair).toBe('');
    const pairs = site.pairs.filter(({ health }) => health.pair === 'RO2');
    expect(worstFor({ ...idle, pairs }, 'now').pair).toBe('RO2');
  });

  test('is Swap now where a folder is followed, and Sources where nothing was read', () => {
    const followed = { name: 'logs', files: 0, said: [], problem: null };
    const view = (pairs: typeof site.pairs, folder: typeof followed | null): string =>
      firstView({ site: { ...site, pairs }, followed: folder });
    expect([view(site.pairs, null), view([], null), view([], followed)]).toEqual(['pairs', 'sources', 'now']);
  });

  test('stays what was chosen, as long as it is there', () => {
    expect(firstChosen(site, { pair: 'RO2', swap: 0 })).toEqual({ pair: 'RO2', swap: 0 });
    expect(firstChosen(site, { pair: 'RO1', swap: 1 }).pair).toBe('RO3');
    expect(firstChosen(site, { pair: 'RO9', swap: 0 }).pair).toBe('RO3');
  });
});

test.each<[AttentionKind[], string]>([
  [['not-ready', 'critical'], 'diagnosis'],
  [['critical', 'flapping'], 'diagnosis'],
  [['unknown'], 'diagnosis'],
  [['stands-out'], 'diagnosis'],
  [['not-verified'], 'swap'],
  [[], 'swap'],
])('a pair with %j opens %s', (kinds, view) => {
  const reasons = kinds.map((kind) => ({ kind, said: '' }));
  expect(neededView({ ...site, attention: [{ pair: 'RO1', reasons }] }, 'RO1')).toBe(view);
});

describe('an address', () => {
  test.each<[string, object]>([
    ['#swap', { picked: null, span: null, said: [] }],
    ['#swap?pair=RO1', { picked: { pair: 'RO1', swap: 0 } }],
    ['#swap?pair=RO1&swap=1', { picked: { pair: 'RO1', swap: 0 }, said: [] }],
    ['#swap?pair=RO1&swap=2', { picked: { pair: 'RO1', swap: 0 }, said: ['the logs show no swap 2 of RO1'] }],
    ['#swap?pair=ro1', { picked: null, said: ['no file read names pair ro1'] }],
    ['#swap?pair=constructor', { picked: null, said: ['no file read names pair constructor'] }],
    [
      '#swap?pair=RO1&from=2026-03-14T10:10:00Z&to=2026-03-14T10:40:00Z',
      { span: { from: Date.UTC(2026, 2, 14, 10, 10), to: Date.UTC(2026, 2, 14, 10, 40) }, said: [] },
    ],
    [
      '#swap?pair=RO1&from=2030-01-01T00:00:00Z&to=2030-01-02T00:00:00Z',
      { span: null, said: ['the log of RO1 does not reach its span of time'] },
    ],
  ])('is fitted to the files that were read: %s', (hash, wanted) => {
    expect(fitAddress(readAddress(hash), site)).toMatchObject(wanted);
  });

  test('is said in words where nothing is read yet', () => {
    expect(sayAsked(readAddress('#swap?pair=RO1&swap=2'), views)).toBe(
      'This address shows Swap record, pair RO1, swap 2. The browser cannot open the files again: drop the same files to see it.',
    );
    expect(sayAsked(readAddress('#fleet'), views)).toContain('shows Fleet.');
    expect(sayAsked(readAddress('#swap?pair=%E2%80%AEx'), views)).toContain('pair ‹202E›x');
    expect(sayAsked(readAddress('#nothing'), views)).toBe('');
  });
});

test('the title names the pair and the day of its swap', () => {
  const state = {
    site,
    session: { ask: () => Promise.reject(new Error('not asked')), close: () => {}, retire: () => {} },
    span: null,
    inputs: {},
    undo: 0,
    fileStep: null,
    followed: null,
    arrivals: noArrivals,
  };
  const of = (view: string, pair: string): string =>
    titleOf(view, { ...state, chosen: { pair, swap: 0 } }, views);
  expect(of('swap', 'RO1')).toBe('RO1 swap of 14 Mar 2026, Steadypair');
  expect(of('swap', 'RO2')).toBe('RO2, no swap, Steadypair');
  expect(of('diagnosis', 'RO3')).toBe('RO3 diagnosis, Steadypair');
  expect(of('fleet', 'RO3')).toBe('Fleet, Steadypair');
  expect(of('', 'RO3')).toBe('Steadypair');
  expect(titleOf('swap', null, views)).toBe('Steadypair');
});
