import { journalText } from './read-text.ts';

/** Stories of modules that go from half to half, told to the hour. */

/** Half A active with a serial of its own, half B standby. */
const pair = (name: string): readonly string[] => [
  `06:00:00 ${name} A role active`,
  `06:00:00 ${name} A serial ${name}-A`,
  `06:00:00 ${name} B role standby`,
  `06:00:00 ${name} partner not ready`,
];
/** A module that comes into half B at a full hour. */
const comes = (name: string, serial: string, hour: string): readonly string[] => [
  `${hour}:00:00 ${name} B module inserted`,
  `${hour}:00:00 ${name} B serial ${serial}`,
];
const goes = (name: string, hour: string): readonly string[] => [
  `${hour}:50:00 ${name} B module removed`,
  `${hour}:50:00 ${name} partner not ready`,
];
/** It was ready until it was pulled ten minutes before the next, or to the end of the log. */
export const works = (name: string, serial: string, hour: string, isLast = false): readonly string[] => [
  ...comes(name, serial, hour),
  `${hour}:02:00 ${name} partner ready`,
  ...(isLast ? [] : goes(name, hour)),
];
/** Its sync failed at some minutes of the hour, twice unless said. */
export const fails = (
  name: string,
  serial: string,
  hour: string,
  isLast = false,
  minutes: readonly string[] = ['10', '20'],
): readonly string[] => [
  ...comes(name, serial, hour),
  ...minutes.flatMap((m) => [
    `${hour}:${m}:00 ${name} B sync start`,
    `${hour}:${m}:50 ${name} B sync failed`,
  ]),
  ...(isLast ? [] : goes(name, hour)),
];

/** The log of three pairs whose stories are given; RO1 may have another name. */
export function moduleJournal(own: string, ...stories: readonly (readonly string[])[]): string {
  const lines = [
    ...[own, 'RO2', 'RO3'].flatMap(pair),
    ...stories.flat(),
    `11:30:00 ${own} A light off`,
    '11:30:00 RO2 A light off',
  ];
  return journalText(lines.sort().join('\n'));
}

/** T4-1 fails in PRETREAT and RO2, and others are ready in both. */
export const badModule: Readonly<Record<string, string>> = {
  'site.log': moduleJournal(
    'PRETREAT',
    works('RO2', 'T4-8', '06'),
    fails('RO2', 'T4-1', '07'),
    works('RO2', 'T4-8', '09', true),
    works('PRETREAT', 'T4-9', '06'),
    fails('PRETREAT', 'T4-1', '08', true),
  ),
};

/** T4-1 and T4-2 fail in PRETREAT, and each is ready in another pair. */
export const badSlot: Readonly<Record<string, string>> = {
  'site.log': moduleJournal(
    'PRETREAT',
    works('RO2', 'T4-1', '06'),
    works('RO3', 'T4-2', '06'),
    works('PRETREAT', 'T4-5', '06'),
    fails('PRETREAT', 'T4-1', '08'),
    fails('PRETREAT', 'T4-2', '09', true),
  ),
};
