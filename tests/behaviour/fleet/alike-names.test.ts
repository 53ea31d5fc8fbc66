import { expect, test } from 'vitest';
import { alikeNames } from '../../../src/fleet/alike-names.ts';

test.each([
  [['6.4.1', 'V6.4.1'], [['6.4.1', 'V6.4.1']]],
  [['06.04.01', '6.4.1', 'release 6.4.1', '6.2.0'], [['06.04.01', '6.4.1', 'release 6.4.1']]],
  [['Tern-2', 'TERN-2', 'Tern 2'], [['TERN-2', 'Tern-2']]],
  [['6.4.1', '6.4.10', '6.4.0'], []],
  [['Tern-2', 'Tern-20', 'Tern-4'], []],
  [['6.4.1', '6.4.1'], []],
  [[], []],
])('of %j those look alike: %j', (names, alike) => {
  expect(alikeNames(names)).toEqual(alike);
});
