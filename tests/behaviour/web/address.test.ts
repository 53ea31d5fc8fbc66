import { describe, expect, test } from 'vitest';
import { type Address, addressOf, readAddress } from '../../../web/address.ts';

const nowhere = { pair: null, swap: null, span: null, inputs: {} } as const;
const from = Date.UTC(2026, 2, 14, 9, 0, 0);
const to = Date.UTC(2026, 2, 14, 10, 30, 0, 250);

describe('an address', () => {
  test('is written with the swap counted from 1, instants in ISO 8601 and inputs by name', () => {
    const inputs = { order: 'name', by: 'model' };
    expect(addressOf({ view: 'swap', pair: 'RO1', swap: 1, span: { from, to }, inputs })).toBe(
      '#swap?pair=RO1&swap=2&from=2026-03-14T09%3A00%3A00.000Z&to=2026-03-14T10%3A30%3A00.250Z&by=model&order=name',
    );
    expect(addressOf({ ...nowhere, view: 'fleet' })).toBe('#fleet');
  });

  test.each<[string, Omit<Address, 'problems'>]>([
    ['a view alone', { ...nowhere, view: 'sources' }],
    ['everything', { view: 'swap', pair: 'RO1', swap: 0, span: { from, to }, inputs: { show: 'a&b=c #?' } }],
    [
      'a name of signs',
      { ...nowhere, view: 'diagnosis', pair: '<img src=x onerror=alert(1)>&pair=RO2#%00\n' },
    ],
    ['a name of another alphabet', { ...nowhere, view: 'pairs', pair: 'Насос 3 – ü' }],
    ['no name at all', { ...nowhere, view: 'pairs', pair: '' }],
    [
      'an input named like what every object has',
      { ...nowhere, view: 'pairs', inputs: { constructor: 'x' } },
    ],
    [
      'a span before the year 0',
      { ...nowhere, view: 'swap', pair: 'P', span: { from: -62_198_755_200_000, to } },
    ],
  ])('comes back as it was: %s', (_, address) => {
    const hash = addressOf(address);
    expect(hash).not.toMatch(/[^\x21-\x7e]/);
    expect(readAddress(hash)).toEqual({ ...address, problems: [] });
  });

  test.each<[string, Partial<Address>]>([
    ['', { view: '' }],
    ['#', { view: '' }],
    ['#swap?', { view: 'swap' }],
    ['#swap?swap=0', { problems: ['its swap is not a number'] }],
    ['#swap?swap=-1', { swap: null }],
    ['#swap?swap=1e3', { swap: null }],
    ['#swap?from=2026-03-14T09:00:00Z', { span: null, problems: ['its from and to are not a span of time'] }],
    ['#swap?from=2026-03-14T09:00:00Z&to=2026-03-14T09:00:00Z', { span: null }],
    ['#swap?from=2026-13-45T99:00:00Z&to=2026-03-14T09:00:00Z', { span: null }],
    ['#swap?from=yesterday&to=now', { span: null }],
    ['#swap?pair=%E0%A4%A&pair=RO1', { view: 'swap' }],
    ['#%%%?%=%&&&===', { view: '%%%', problems: ['part of it was not recognised'] }],
    ['#pairs?__proto__=x', { inputs: {}, problems: ['part of it was not recognised'] }],
    [`#pairs?show=${'a'.repeat(501)}`, { inputs: {}, problems: ['part of it was not recognised'] }],
    [
      `#pairs?${Array.from({ length: 41 }, (_, n) => `a${n}=1`).join('&')}`,
      { problems: ['part of it was not recognised'] },
    ],
    [`#pairs?show=${'a'.repeat(100_000)}`, { view: '', problems: ['it is too long'] }],
  ])('that is odd is read as far as it goes: %.60s', (hash, wanted) => {
    expect(readAddress(hash)).toMatchObject(wanted);
  });
});
