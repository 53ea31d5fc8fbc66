import { exposure } from '../../../src/analyze/exposure.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

checkAnalyzer(exposure, {
  reports: [
    {
      name: 'a loss that nothing explains; 90 s of an hour: 58.5 of 60 minutes are 0.975',
      journal: `10:00:00  RO1  partner ready
                10:10:00  RO1  partner not ready
                10:11:30  RO1  partner ready
                11:00:00  RO1  configuration current`,
      findings: [
        { id: 'exposure', figures: { seconds: 90, low: 90, high: 90, stretches: 1, availability: 0.975 } },
        { id: 'unplanned-exposure', lines: [2, 3], figures: { seconds: 90 } },
      ],
    },
  ],
  quiet: [
    {
      name: 'the loss that a removal brings, up to the first readiness after it',
      journal: `10:00:00  RO1    partner ready
                10:00:00  RO1 A  role active
                10:00:00  RO1 B  role standby
                10:10:00  RO1 B  module removed
                10:10:01  RO1    partner not ready
                10:12:00  RO1 B  module inserted
                10:16:00  RO1    partner ready
                11:00:00  RO1    configuration current`,
    },
    { name: 'always ready', journal: '10:00:00  RO1  partner ready\n11:00:00  RO1  configuration current' },
  ],
  notObserved: [{ name: 'readiness is never logged', journal: '10:00:00  RO1 B  light steady' }],
});
