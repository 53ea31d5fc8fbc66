import { expect, test } from 'vitest';
import { coincidence } from '../../../src/analyze/coincidence.ts';
import { checkAnalyzer } from '../../support/check-analyzer.ts';
import { analyseTexts, journalText } from '../../support/read-text.ts';

interface Cycle {
  readonly hour: string;
  /** The lines that come before the loss. */
  readonly before: string;
}

/** One loss an hour, at :20:40, and the return at :22:00. */
const cycle = ({ hour, before }: Cycle): string =>
  `${before}
   ${hour}:20:40  RO1    partner not ready
   ${hour}:21:00  RO1 B  link a up
   ${hour}:22:00  RO1    partner ready`;
const hours = ['10', '11', '12'];
const inHours = (before: (hour: string) => string, of: readonly string[] = hours): string =>
  `10:00:00  RO1  partner ready
   ${of.map((hour) => cycle({ hour, before: before(hour) })).join('\n')}
   14:00:00  RO1  light steady`;

/** Three losses in a quarter of an hour, each 10 s after link a went down; a minute and more before each what else is logged. */
const dense = (others: readonly string[]): string =>
  `10:00:00  RO1    partner ready
   ${['02', '07', '12']
     .map(
       (
         minute,
       ) => `${others.map((other) => `10:${String(Number(minute) - 1).padStart(2, '0')}:00  RO1 B  ${other}`).join('\n')}
                    10:${minute}:00  RO1 B  link a down
                    10:${minute}:10  RO1    partner not ready
                    10:${minute}:20  RO1 B  link a up
                    10:${minute}:30  RO1    partner ready`,
     )
     .join('\n')}
   10:15:00  RO1  light off`;

/** A poll every ten seconds from 10:00:00 on: per row readiness and link a of half B. */
const poll = (rows: readonly string[], spacing = 10): string =>
  `time,unit,partner ready,link a\n${rows
    .map((row, index) => {
      const at = new Date(Date.UTC(2026, 2, 14, 10) + index * spacing * 1000).toISOString();
      return `${at},RO1-B,${row}`;
    })
    .join('\n')}\n`;
/** The same spacing and day, link a only, down in the rows of these clocks. */
const linkPoll = (downs: readonly string[]): string =>
  `time,unit,link a\n${Array.from({ length: 1440 }, (_, index) => {
    const at = new Date(Date.UTC(2026, 2, 14, 10) + index * 10_000).toISOString();
    return `${at},RO1-B,${downs.includes(at.slice(11, 19)) ? 'down' : 'up'}`;
  }).join('\n')}\n`;
const calm = Array.from({ length: 60 }, () => 'yes,up');
const together = ['no,down', 'no,up', ...calm];
const inTurn = ['yes,down', 'no,down', 'no,up', ...calm];

checkAnalyzer(coincidence, {
  reports: [
    {
      // In the ten minutes before each loss one change: it would be in the last 30 s of them in 30 of 600 cases. All three
      // are, 0.05^3 = 0.000125. The returns of the link came while the partner was not ready: no kind of their own.
      name: 'all three losses come just within 30 s after link a went down',
      journal: inHours((h) => `${h}:20:10  RO1 B  link a down`),
      findings: [
        {
          id: 'coincidence',
          half: 'B',
          lines: [2, 3, 6, 7, 10, 11],
          figures: {
            count: 3,
            losses: 3,
            expected: expect.closeTo(0.15, 9),
            p: expect.closeTo(0.000125, 9),
            questions: 1,
          },
        },
      ],
    },
    {
      // The return of the supply at :10 lies more than ten minutes before every loss: nothing is asked of it.
      name: 'two changes before each loss are told apart',
      journal: inHours(
        (h) => `${h}:10:00  RO1 B  supply good
                ${h}:20:15  RO1 B  supply fault
                ${h}:20:20  RO1 B  link a down`,
      ),
      findings: [
        { id: 'coincidence', lines: [3, 5, 9, 11, 15, 17], figures: { count: 3, questions: 2 } },
        { id: 'coincidence', lines: [4, 5, 10, 11, 16, 17], figures: { count: 3, questions: 2 } },
      ],
    },
    {
      // The windows of the first loss overlap. Two late in its lead may be a storm that has just begun: they cover 40 s of its last
      // 300 s, the others' 30 s of 600 s.
      name: 'changes of either half of one kind are counted together, each loss with the last of them',
      journal: `10:00:00  RO1  partner ready
                10:10:00  RO1 B  link a up
                10:20:10  RO1 A  link a down
                10:20:20  RO1 B  link a down
                10:20:40  RO1    partner not ready
                10:21:00  RO1 A  link a up
                10:22:00  RO1    partner ready
                11:20:10  RO1 A  link a down
                11:20:40  RO1    partner not ready
                11:21:00  RO1 B  link a up
                11:22:00  RO1    partner ready
                12:20:10  RO1 B  link a down
                12:20:40  RO1    partner not ready
                12:22:00  RO1    partner ready
                16:00:00  RO1    light steady`,
      findings: [
        {
          id: 'coincidence',
          lines: [4, 5, 8, 9, 12, 13],
          figures: { count: 3, questions: 1, expected: expect.closeTo(40 / 300 + 60 / 600, 9) },
        },
      ],
    },
    {
      // The leads are 125, 275 and 275 s long, from 5 s after a return on: 30 / 125 * (30 / 275)^2 = 0.0029, and with a
      // second question 0.0057.
      name: 'two questions leave enough of the significance',
      journal: dense(['sync start']),
      findings: [{ id: 'coincidence', figures: { count: 3, questions: 2, p: expect.closeTo(0.005712, 6) } }],
    },
    {
      // A poll apart: the link fell in (t - 10, t], the readiness in (t, t + 10], so at most 20 s lie between.
      name: 'one poll before each loss',
      files: { 'poll.csv': poll([...calm, ...inTurn, ...calm, ...inTurn, ...calm, ...inTurn, ...calm]) },
      findings: [{ id: 'coincidence', half: 'B', figures: { count: 3, losses: 3 } }],
    },
  ],
  quiet: [
    {
      name: 'a millisecond more than 30 s before each loss',
      journal: inHours((h) => `${h}:20:09.999  RO1 B  link a down`),
    },
    {
      name: 'at the very instant of each loss',
      journal: inHours((h) => `${h}:20:40  RO1 B  link a down`),
    },
    {
      name: 'two losses only',
      journal: inHours((h) => `${h}:20:10  RO1 B  link a down`, ['10', '11']),
    },
    {
      // As above, but four questions: 4 * 0.0029 is past 0.01.
      name: 'four questions leave too little of the significance',
      journal: dense(['sync start', 'sync failed', 'fault']),
    },
    {
      // The link goes down at every full minute: in the ten minutes before each loss it is down for half of the time, so
      // that all three would be preceded in one of eight cases.
      name: 'a storm of changes, with losses among them',
      journal: inHours((h) =>
        Array.from(
          { length: 11 },
          (_, index) => `${h}:${index + 10}:30  RO1 B  link a down
                         ${h}:${index + 10}:35  RO1 B  link a up`,
        ).join('\n'),
      ),
    },
    {
      // Losses 10, 22 and 29 s after the one change: each but the first is less than 5 s after a return.
      name: 'one change before several losses counts once',
      journal: `10:00:00  RO1    partner ready
                10:20:00  RO1 B  link a down
                ${['10', '22', '29']
                  .map(
                    (second) => `10:20:${second}  RO1    partner not ready
                                 10:20:${Number(second) + 3}  RO1    partner ready`,
                  )
                  .join('\n')}
                18:00:00  RO1 B  light steady`,
    },
    {
      name: 'in the same poll as each loss: which came first is not known',
      files: {
        'poll.csv': poll([...calm, ...together, ...calm, ...together, ...calm, ...together, ...calm]),
      },
    },
    {
      // The poll read the link up ten seconds before: it fell before the loss, or with it.
      name: 'polled at the very instant of each loss',
      files: {
        'poll.csv': linkPoll(['10:20:40', '11:20:40', '12:20:40']),
        'ro1.log': journalText(
          `10:00:00  RO1  partner ready
           ${hours.map((h) => `${h}:20:40  RO1  partner not ready\n${h}:22:00  RO1  partner ready`).join('\n')}
           14:00:00  RO1  partner ready`,
        ),
      },
    },
    {
      // Each failure is 20 s after a loss and 20 s before the next: it belongs to the one before.
      name: 'what a loss brings is no cause of the next',
      journal: `10:00:00  RO1    partner ready
                ${['10', '11', '12']
                  .map(
                    (minute) => `10:${minute}:00  RO1    partner not ready
                                 10:${minute}:20  RO1 B  sync failed
                                 10:${minute}:25  RO1    partner ready
                                 10:${minute}:40  RO1    partner not ready
                                 10:${minute}:50  RO1    partner ready`,
                  )
                  .join('\n')}
                18:00:00  RO1 B  light steady`,
    },
    {
      // The link changes 4 s after each return and 20 s before the next loss: it belongs to the return.
      name: 'what the return of the partner brings is no cause of the next loss',
      journal: `10:00:00  RO1 A  role active
                10:00:00  RO1    partner ready
                ${['10', '11', '12', '13']
                  .map(
                    (minute) => `10:${minute}:00  RO1    partner not ready
                                 10:${minute}:20  RO1    partner ready
                                 10:${minute}:24  RO1 B  link a down
                                 10:${minute}:44  RO1    partner not ready
                                 10:${minute}:46  RO1 B  link a up
                                 10:${minute}:50  RO1    partner ready`,
                  )
                  .join('\n')}
                18:00:00  RO1 B  light steady`,
    },
    {
      name: 'before planned work there is no loss that counts',
      journal: inHours(
        (h) => `${h}:20:10  RO1 B  link a down
                ${h}:20:39  RO1 B  removed`,
      ),
    },
  ],
  notObserved: [
    { name: 'readiness is never logged', journal: '10:00:00  RO1 B  link a down' },
    {
      name: 'a poll every minute can not tell what came within 30 s',
      files: { 'poll.csv': poll([...calm, ...inTurn, ...inTurn, ...inTurn], 60) },
    },
  ],
});

test('says it in one plain sentence with its numbers', async () => {
  const journal = journalText(inHours((h) => `${h}:20:10  RO1 B  link a down`));
  const { findings } = await analyseTexts({ 'ro1.log': journal });
  expect(findings.flatMap((f) => (f.id === 'coincidence' ? [f.statement] : []))).toEqual([
    '3 of 3 losses came within 30 s after link a of half B went down; by chance 0.15 would (p = 0.00013, the only question asked).',
  ]);
});
