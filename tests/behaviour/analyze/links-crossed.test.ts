import { linksCrossed } from '../../../src/analyze/links-crossed.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

checkAnalyzer(linksCrossed, {
  reports: [
    {
      name: 'crossed for ten minutes, then set right',
      journal: `10:00:00  RO1 B  links straight
                10:10:00  RO1 B  links crossed
                10:20:00  RO1 B  links straight
                10:30:00  RO1 B  light steady`,
      findings: [{ id: 'links-crossed', half: 'B', lines: [2, 3], figures: { seconds: 600 } }],
    },
    {
      name: 'crossed up to the end of the log, twenty minutes later',
      journal: `10:00:00  RO1 A  links straight
                10:10:00  RO1 B  links crossed
                10:30:00  RO1 B  light steady`,
      findings: [{ id: 'links-crossed', half: 'B', lines: [2], figures: { seconds: 1200 } }],
    },
    {
      name: 'crossed on both halves since before the log begins',
      files: {
        'poll.csv':
          'time,unit,links\n2026-03-14T10:00:00.0Z,RO1-A,crossed\n2026-03-14T10:00:00.0Z,RO1-B,crossed\n2026-03-14T10:00:10.0Z,RO1-A,crossed\n2026-03-14T10:00:10.0Z,RO1-B,crossed\n',
      },
      findings: [
        { id: 'links-crossed', half: 'A', lines: [2], figures: { seconds: 10 } },
        { id: 'links-crossed', half: 'B', lines: [3], figures: { seconds: 10 } },
      ],
    },
  ],
  quiet: [
    {
      name: 'straight on both halves',
      journal: `10:00:00  RO1 A  links straight
                10:00:00  RO1 B  links straight`,
    },
  ],
  notObserved: [
    { name: 'nothing is said of the links', journal: '10:00:00  RO1 B  light steady' },
    { name: 'nothing is said of the other half', journal: '10:00:00  RO1 B  links straight' },
  ],
});
