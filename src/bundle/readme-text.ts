import { cautions } from '../report/cautions.ts';
import type { BundleCase } from './case.ts';
import { bundleParts } from './inside.ts';

/** The page that comes first: what a bundle is, in which order it is read, how it is checked. */
export function readmeText(inside: BundleCase, isMasked: boolean): string {
  const lines = [
    ...opening(inside),
    ...again(inside),
    ...notInside,
    ...(isMasked ? masked : plain),
    '',
    'Cautions',
    '',
    ...cautions.map((caution) => `- ${caution}`),
    '- The verdict is evidence for the person in charge, not permission.',
  ];
  return `${lines.join('\r\n')}\r\n`;
}

function opening({ command, job, phrasebook, settings }: BundleCase): readonly string[] {
  const subject = {
    verify: 'replacement of modules of a redundant pair',
    diagnose: 'a redundant pair that does not synchronise',
  }[command];
  const pair = settings.pair === null ? '' : `, ${settings.pair}`;
  const parts: readonly (readonly [string, string])[] = [
    ['reports/', 'the report: open the .html file in a browser; the .md file is a summary'],
    [`${command}.json`, 'the same as data'],
    [bundleParts.logs, 'the lines that it rests on, as they were exported'],
    ...(phrasebook === null ? [] : [[bundleParts.phrasebook, "meaning of the site's wording"] as const]),
    ...(job === null ? [] : [[bundleParts.job, 'work order, people and plan'] as const]),
    [bundleParts.settings, 'how the logs were read: time zone, clocks, which pair and which time'],
    [bundleParts.manifest, 'every file in here with its size and SHA-256, and what each log was'],
  ];
  return [
    `Steadypair: ${subject}${pair}`,
    '',
    'Read in this order:',
    '',
    ...parts.map(([name, says], index) => `${index + 1}. ${name.padEnd(16)} ${says}.`),
    '',
  ];
}

function again({ command }: BundleCase): readonly string[] {
  return [
    'To get the same result again, give this archive to Steadypair as it is, or drop it on its page. The phrasebook, the job',
    'and the settings inside apply unless others are given:',
    '',
    `    node steadypair.mjs ${command} FILE.zip`,
    '',
    'A file that differs from its SHA-256 is left out and named; then the verdict cannot be "verified". To check by hand,',
    'unpack the archive and compare with manifest.json:',
    '',
    '    sha256sum logs/*                        Linux',
    '    shasum -a 256 logs/*                    macOS',
    '    Get-FileHash logs\\* -Algorithm SHA256   Windows PowerShell',
    '',
  ];
}

const notInside = [
  'Not inside: pictures, documents and earlier reports; and of a log of more than 64 MB the lines of other times, which are',
  'left empty, so that every line keeps its number. manifest.json lists the lines that are inside.',
  '',
];

const plain = [
  'Private: it holds the names of the site and of its people. Pass it on only to those who need it.',
];

const masked = [
  'Names of pairs, units, sites and people, serials and addresses are stand-ins, the same everywhere: letters for letters,',
  'digits for digits. The key is not in here; whoever made the archive has it. Names and SHA-256 of the original files are',
  'left out. Free text that no rule knows may still hold more: read the logs before you publish them.',
];
