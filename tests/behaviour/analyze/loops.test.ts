import { loops } from '../../../src/analyze/loops.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

const begin = `10:00:00  RO1 A  role active
               10:00:00  RO1    partner not ready`;
const failed = (clocks: readonly string[]): string =>
  clocks.map((c) => `${c}:00  RO1 B  sync failed`).join('\n');
const restarts = (clocks: readonly string[]): string =>
  clocks.map((c) => `${c}  RO1 B  module restart`).join('\n');

checkAnalyzer(loops, {
  reports: [
    {
      name: 'three syncs that failed, five minutes apart',
      journal: `${begin}\n${failed(['10:10', '10:15', '10:20'])}`,
      findings: [
        { id: 'sync-loop', half: 'B', lines: [3, 4, 5], figures: { count: 3, seconds: 600, failed: 3 } },
      ],
    },
    {
      name: 'a ready that did not hold a minute does not part the failures',
      journal: `${begin}
                ${failed(['10:10', '10:15'])}
                10:16:00  RO1    partner ready
                10:16:59  RO1    partner not ready
                ${failed(['10:20'])}`,
      findings: [{ id: 'sync-loop', half: 'B', lines: [3, 4, 7], figures: { count: 3 } }],
    },
    {
      name: 'three bring-ups that came to nothing: pulled, pulled again, and ready but lost',
      journal: `${begin}
                10:10:00  RO1 B  inserted
                10:20:00  RO1 B  removed
                10:21:00  RO1 B  inserted
                10:31:00  RO1 B  removed
                10:32:00  RO1 B  inserted
                10:40:00  RO1    partner ready
                10:40:20  RO1    partner not ready
                10:50:00  RO1 B  light flashing`,
      findings: [
        { id: 'sync-loop', half: 'B', figures: { count: 3, seconds: 1320, unfinished: 2, lost: 1 } },
      ],
    },
    {
      // The third is still under way when the log ends, so that the syncs are no loop yet.
      name: 'three restarts, the last just within half an hour of the second',
      journal: `${begin}\n${restarts(['10:10:00', '10:20:00', '10:50:00'])}`,
      findings: [
        {
          id: 'restart-loop',
          half: 'B',
          lines: [3, 4, 5],
          figures: { count: 3, seconds: 2400, superseded: 2, unfinished: 1 },
        },
      ],
    },
    {
      name: 'four restarts, each cut short by the next: both loops',
      journal: `${begin}\n${restarts(['10:10:00', '10:12:00', '10:14:00', '10:16:00'])}`,
      findings: [
        { id: 'sync-loop', half: 'B', figures: { count: 3, superseded: 3 } },
        { id: 'restart-loop', half: 'B', lines: [3, 4, 5, 6], figures: { count: 4, unfinished: 1 } },
      ],
    },
    {
      name: 'restarts after each of which the partner was ready and held',
      journal: `${begin}
                10:10:00  RO1 B  module restart
                10:12:00  RO1    partner ready
                10:20:00  RO1 B  module restart
                10:20:01  RO1    partner not ready
                10:22:00  RO1    partner ready
                10:30:00  RO1 B  module restart
                10:30:01  RO1    partner not ready
                10:32:00  RO1    partner ready
                10:40:00  RO1 B  light steady`,
      findings: [{ id: 'restart-loop', half: 'B', lines: [3, 5, 8], figures: { count: 3, settled: 3 } }],
    },
  ],
  quiet: [
    { name: 'two syncs that failed', journal: `${begin}\n${failed(['10:10', '10:15'])}` },
    {
      name: 'failures that a ready partner parts for a minute',
      journal: `${begin}
                ${failed(['10:10', '10:15'])}
                10:16:00  RO1    partner ready
                10:17:00  RO1    partner not ready
                ${failed(['10:20'])}`,
    },
    {
      name: 'one failure of each half in turn',
      journal: `${begin}
                10:10:00  RO1 B  sync failed
                10:15:00  RO1 A  sync failed
                10:20:00  RO1 B  sync failed`,
    },
    {
      name: 'the last restart more than half an hour after the second',
      journal: `${begin}\n${restarts(['10:10:00', '10:20:00', '10:50:00.001'])}`,
    },
    {
      name: 'restarts that belong to a reflash',
      journal: `${begin}
                10:10:00  RO1 B  inserted
                10:12:00  RO1 B  reflash start
                10:13:00  RO1 B  module restart
                10:14:00  RO1 B  module restart
                10:15:00  RO1 B  module restart
                10:16:00  RO1 B  reflash end
                10:18:00  RO1    partner ready
                10:30:00  RO1 B  light steady`,
    },
  ],
  notObserved: [
    { name: 'readiness is never logged', journal: restarts(['10:10:00', '10:11:00', '10:12:00']) },
    {
      name: 'no half can be told for the failures',
      journal: `10:00:00  RO1  partner not ready
                10:10:00  RO1  sync failed
                10:15:00  RO1  sync failed
                10:20:00  RO1  sync failed`,
    },
  ],
});
