import { syncTime } from '../../../src/analyze/sync-time.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

checkAnalyzer(syncTime, {
  reports: [
    {
      name: 'ready 140 s after the reflash ended and stayed ready',
      journal: `10:00:00  RO1 A  role active
                10:00:00  RO1 B  role standby
                10:00:00  RO1    partner ready
                10:05:00  RO1 B  reflash start
                10:05:00  RO1    partner not ready
                10:08:00  RO1 B  reflash end
                10:10:20  RO1    partner ready
                10:20:00  RO1 A  firmware 6.4.1`,
      findings: [
        {
          id: 'sync-time',
          half: 'B',
          lines: [6, 7],
          figures: { seconds: 140, low: 140, high: 140, settledSeconds: 140 },
        },
      ],
    },
    {
      name: 'never ready until the log ends',
      journal: `10:00:00  RO1 A  role active
                10:00:00  RO1 B  role standby
                10:01:00  RO1 B  module removed
                10:01:00  RO1    partner not ready
                10:02:00  RO1 B  module inserted
                10:12:00  RO1 B  light flashing`,
      findings: [{ id: 'sync-unfinished', half: 'B', lines: [5, 6], figures: { seconds: 600 } }],
    },
  ],
  quiet: [
    {
      name: 'an insertion that the reflash after it superseded',
      journal: `10:00:00  RO1 A  role active
                10:00:00  RO1 B  role standby
                10:01:00  RO1 B  module removed
                10:01:00  RO1    partner not ready
                10:02:00  RO1 B  module inserted
                10:03:00  RO1 B  reflash start
                10:05:00  RO1 B  reflash end
                10:07:00  RO1    partner ready
                10:09:00  RO1 A  firmware 6.4.1`,
    },
  ],
  notObserved: [
    {
      name: 'readiness is never logged',
      journal: `10:00:00  RO1 B  role standby
                10:01:00  RO1 B  module restart`,
    },
  ],
});
