import { expect, test } from 'vitest';
import { siteGroups } from '../../../../src/import/stored/site-groups.ts';
import type { StoredPlace } from '../../../../src/import/stored/stored-places.ts';

const place = (pair: string, site: string | null, unitSite: string | null = null): StoredPlace => ({
  pair,
  site,
  unitSite,
});

test.each<readonly [string, readonly (readonly StoredPlace[])[], readonly (readonly number[])[]]>([
  ['files of one site', [[place('RO1', 'Gull')], [place('RO2', 'Gull')]], [[0, 1]]],
  [
    'sites with pairs of one name stay apart, their months among each other',
    [[place('RO1', 'Gull')], [place('RO1', 'Tern')], [place('RO1', 'Gull')]],
    [[0, 2], [1]],
  ],
  [
    'a pair of no site may be of any',
    [[place('RO1', 'Gull')], [place('RO1', null)], [place('RO1', 'Tern')], [place('RO2', 'Marrow')]],
    [[0, 1, 2], [3]],
  ],
  ['pairs of no site and other names', [[place('RO1', null)], [place('RO2', null)]], [[0], [1]]],
  [
    'a unit that names its site counts before the phrasebook',
    [[place('RO1', 'Works', 'Gull')], [place('RO1', 'Works', 'Tern')]],
    [[0], [1]],
  ],
  [
    'a unit without a site may be at one that another unit of its pair names',
    [[place('RO1', 'Works', 'Gull')], [place('RO1', 'Works')], [place('RO2', 'Works', 'Gull')]],
    [[0, 1, 2]],
  ],
  ['files without pairs', [[], [place('RO1', 'Gull')], []], [[0], [1], [2]]],
])('read together: %s', (_name, files, groups) => {
  expect(siteGroups(files)).toEqual(groups);
});
