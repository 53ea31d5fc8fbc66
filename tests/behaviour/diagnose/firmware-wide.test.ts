import { describe, expect, test } from 'vitest';
import { firmwareWide } from '../../../src/diagnose/firmware-wide.ts';
import { checkCause, diagnoseCase } from '../../support/check-cause.ts';
import { firmwareFails } from '../../support/module-troubles.ts';
import { journalText } from '../../support/read-text.ts';

checkCause(firmwareWide, {
  shows: {
    name: 'two other pairs with it have trouble, two without it none',
    files: firmwareFails(41),
    alone: true,
  },
  lookAlike: {
    name: 'pairs with other firmware have as much trouble',
    files: firmwareFails(42, true),
    alone: true,
    instead: 'too-little-data',
  },
  tooLittle: { name: 'the files speak of one pair', names: 'load' },
});

describe('the failures of other pairs', () => {
  test('a loss that lasts, and one of a partner that did not hold, count once each', async () => {
    const other = journalText(`06:00:00  RO2 A  role active
      06:00:00  RO2 B  role standby
      06:00:00  RO2 A  firmware 6.4.1
      06:00:00  RO2 B  firmware 6.4.1
      06:00:00  RO2    partner ready
      06:30:00  RO2    partner not ready
      06:40:00  RO2    partner ready
      06:40:20  RO2    partner not ready
      08:00:00  RO2 A  light off`);
    const { doubted } = await diagnoseCase({ name: '', files: { 'ro2.log': other } });
    const [point] = doubted.find((d) => d.id === firmwareWide.meta.id)?.against ?? [];
    expect(point?.statement).toContain('with firmware 6.4.1 2 in 2.0 h, on 1 pair;');
  });
});
