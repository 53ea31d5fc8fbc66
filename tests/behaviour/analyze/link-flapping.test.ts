import { linkFlapping } from '../../../src/analyze/link-flapping.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

// As for flapping: two downs 300 s apart leave 1 * 2^(-1/3) + 1 = 1.794, a third makes 1.794 * 2^(-1/3) + 1 = 2.424.
const downs = (clocks: readonly string[], link = 'link a', half = 'B'): string =>
  clocks
    .flatMap((c) => [`${c}:00  RO1 ${half}  ${link} down`, `${c}:20  RO1 ${half}  ${link} up`])
    .join('\n');
const allUp = `10:00:00  RO1 A  link a up
               10:00:00  RO1 A  link b up
               10:00:00  RO1 B  link a up
               10:00:00  RO1 B  link b up`;

checkAnalyzer(linkFlapping, {
  reports: [
    {
      name: 'link a of half B, three times within ten minutes',
      journal: `${allUp}\n${downs(['10:10', '10:15', '10:20'])}`,
      findings: [
        {
          id: 'link-flapping',
          half: 'B',
          lines: [5, 7, 9],
          figures: { downs: 3, seconds: 600, penalty: 2.424 },
        },
      ],
    },
    {
      name: 'link b of half A, while half B is replaced',
      journal: `${allUp}
                10:09:00  RO1 B  removed
                ${downs(['10:10', '10:15', '10:20'], 'link b', 'A')}`,
      findings: [{ id: 'link-flapping', half: 'A', lines: [6, 8, 10], figures: { downs: 3 } }],
    },
  ],
  quiet: [
    { name: 'two times within five minutes', journal: `${allUp}\n${downs(['10:10', '10:15'])}` },
    {
      name: 'every fifteen minutes',
      journal: `${allUp}\n${downs(['10:10', '10:25', '10:40', '10:55', '11:10'])}`,
    },
    {
      name: 'both links in turn, none of them three times',
      journal: `${allUp}
                ${downs(['10:10'])}
                ${downs(['10:12'], 'link b')}
                ${downs(['10:15'])}
                ${downs(['10:17'], 'link b')}`,
    },
    {
      name: 'while the half is taken out and put back',
      journal: `${allUp}
                10:09:00  RO1 B  removed
                ${downs(['10:10', '10:15', '10:20'])}`,
    },
    {
      name: 'with restarts of the half that explain it',
      journal: `${allUp}
                10:10:00  RO1 B  module restart
                10:10:01  RO1 B  link a down
                10:10:40  RO1 B  link a up
                10:15:00  RO1 B  module restart
                10:15:01  RO1 B  link a down
                10:15:40  RO1 B  link a up
                10:20:00  RO1 B  module restart
                10:20:01  RO1 B  link a down
                10:20:40  RO1 B  link a up`,
    },
  ],
  notObserved: [
    { name: 'no link is ever logged', journal: '10:00:00  RO1 B  light steady' },
    { name: 'one link of one half is logged', journal: '10:00:00  RO1 B  link a up' },
  ],
});
