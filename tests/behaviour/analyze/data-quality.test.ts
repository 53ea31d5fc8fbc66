import { dataQuality } from '../../../src/analyze/data-quality.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';

const poll = (clocks: readonly string[]): string =>
  `time,unit,parameter,value\n${clocks.map((c) => `2026-03-14T${c}.0Z,RO1,partner-ready,yes`).join('\n')}\n`;

checkAnalyzer(dataQuality, {
  reports: [
    {
      name: 'a span longer than three times the spacing of 10 s',
      files: { 'poll.csv': poll(['10:00:00', '10:00:10', '10:00:20', '10:00:30', '10:01:01', '10:01:11']) },
      findings: [{ id: 'unobserved', lines: [5, 6], figures: { spans: 1, seconds: 31 } }],
    },
  ],
  quiet: [
    {
      name: 'a span of three times the spacing',
      files: { 'poll.csv': poll(['10:00:00', '10:00:10', '10:00:20', '10:00:50', '10:01:00']) },
    },
    {
      name: 'a journal that tells of roles alone',
      journal: '10:00:00  RO1-A  role active\n10:00:01  RO1-B  role standby\n15:00:00  RO1-B  role active',
    },
    {
      name: 'a journal has no such spans',
      journal: '10:00:00  RO1  partner ready\n15:00:00  RO1  configuration current',
    },
  ],
  notObserved: [],
});
