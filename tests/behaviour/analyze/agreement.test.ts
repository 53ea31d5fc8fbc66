import { agreement } from '../../../src/analyze/agreement.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

checkAnalyzer(agreement, {
  reports: [
    {
      name: 'the half that takes over runs older firmware on another model',
      journal: `10:00:00  RO1 A  firmware 6.4.1
                10:00:00  RO1 B  firmware 6.2.0
                10:00:00  RO1 A  model Tern-4
                10:00:00  RO1 B  model Tern-2
                10:00:00  RO1 A  role active
                10:00:00  RO1 B  role standby
                10:05:00  RO1 A  role standby
                10:05:00  RO1 B  role active`,
      findings: [
        { id: 'firmware-mismatch' },
        { id: 'model-mismatch' },
        { id: 'firmware-mismatch', half: 'B' },
      ],
    },
  ],
  quiet: [
    {
      name: 'both halves run the same firmware',
      journal: `10:00:00  RO1 A  firmware 6.4.1
                10:00:00  RO1 B  firmware 6.4.1`,
    },
    {
      name: 'a new module arrives with older firmware and is reflashed',
      journal: `10:00:00  RO1 A  firmware 6.4.1
                10:00:00  RO1 B  firmware 6.4.1
                10:00:00  RO1 B  serial T2-1
                10:05:00  RO1 B  module removed
                10:09:00  RO1 B  module inserted
                10:09:00  RO1 B  serial T4-2
                10:09:00  RO1 B  firmware 6.2.0
                10:15:00  RO1 B  reflash end
                10:15:00  RO1 B  firmware 6.4.1
                10:30:00  RO1 A  light off`,
    },
  ],
  notObserved: [{ name: 'firmware is never logged', journal: '10:00:00  RO1  partner ready' }],
});
