import { flapping } from '../../../src/analyze/flapping.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

// With a half-life of 900 s, two losses 300 s apart leave 1 * 2^(-1/3) + 1 = 1.794; a third makes
// 1.794 * 2^(-1/3) + 1 = 2.424, past the cut-off of 2. Losses 900 s apart tend to 2 and never pass it.
const losses = (clocks: readonly string[]): string =>
  [
    '10:00:00  RO1  partner ready',
    ...clocks.flatMap((c) => [`${c}:00  RO1  partner not ready`, `${c}:20  RO1  partner ready`]),
  ].join('\n');

checkAnalyzer(flapping, {
  reports: [
    {
      name: 'three losses within ten minutes',
      journal: losses(['10:10', '10:15', '10:20']),
      findings: [{ id: 'flapping', lines: [2, 4, 6], figures: { losses: 3, seconds: 600, penalty: 2.424 } }],
    },
  ],
  quiet: [
    { name: 'two losses within five minutes', journal: losses(['10:10', '10:15']) },
    {
      name: 'a loss every fifteen minutes',
      journal: losses(['10:00', '10:15', '10:30', '10:45', '11:00', '11:15']),
    },
    {
      name: 'losses that restarts explain',
      journal: `10:00:00  RO1    partner ready
                10:00:00  RO1 B  role standby
                10:10:00  RO1 B  module restart
                10:10:01  RO1    partner not ready
                10:11:00  RO1    partner ready
                10:13:00  RO1 B  module restart
                10:13:01  RO1    partner not ready
                10:14:00  RO1    partner ready
                10:16:00  RO1 B  module restart
                10:16:01  RO1    partner not ready
                10:17:00  RO1    partner ready`,
    },
  ],
  notObserved: [{ name: 'readiness is never logged', journal: '10:00:00  RO1 B  light steady' }],
});
