import { noSettings, type Settings } from './bundle-schema.ts';
import type { Bundle, NamedYaml } from './open-bundle.ts';

/** What the bundles among some files say of how they are to be read, and a line on each thing that needs a word. */
export interface SaidByBundles {
  readonly phrasebook: NamedYaml | null;
  readonly job: NamedYaml | null;
  readonly settings: Settings;
  readonly notices: readonly string[];
}

const words: Readonly<Record<keyof Settings, string>> = {
  zone: 'zone',
  order: 'order of day and month',
  year: 'year',
  align: 'correction of clocks',
  reference: 'reference clock',
  hold: 'hold time',
  pair: 'choice of pair',
  from: 'start of the time looked at',
  to: 'end of the time looked at',
};

/**
 * What they all say applies; where two differ neither applies, since it would be wrong for the other. Which pair and which time
 * were looked at counts only where there are no other files: nothing else is to be hidden.
 */
export function bundlesSay(bundles: readonly Bundle[], hasOthers: boolean): SaidByBundles {
  const [first, ...others] = bundles;
  if (first === undefined) return { phrasebook: null, job: null, settings: noSettings, notices: [] };
  const differs: string[] = [];
  const alike = <T>(word: string, of: (bundle: Bundle) => T): boolean => {
    const isAlike = others.every((other) => of(other) === of(first));
    if (!isAlike) differs.push(word);
    return isAlike;
  };
  const phrasebook = alike('phrasebook', (b) => b.phrasebook?.text ?? null) ? first.phrasebook : null;
  const job = alike('job', (b) => b.job?.text ?? null) ? first.job : null;
  const said = Object.fromEntries(
    settingKeys.map((key) => [key, alike(words[key], (b) => b.settings[key]) ? first.settings[key] : null]),
  );
  const settings = hasOthers
    ? { ...first.settings, ...said, pair: null, from: null, to: null }
    : { ...first.settings, ...said };
  return {
    phrasebook,
    job,
    settings: { ...settings, align: settings.align === true },
    notices: noticesOf(bundles, differs, hasOthers),
  };
}

const settingKeys = [
  'zone',
  'order',
  'year',
  'align',
  'reference',
  'hold',
  'pair',
  'from',
  'to',
] as const satisfies readonly (keyof Settings)[];

function noticesOf(
  bundles: readonly Bundle[],
  differs: readonly string[],
  hasOthers: boolean,
): readonly string[] {
  const names = bundles.map(({ name }) => name).join(', ');
  const [first = ''] = bundles.map(({ name }) => name);
  return [
    ...(differs.length === 0
      ? []
      : [
          `${names}: they differ in ${differs.join(', ')}, and none of these applies. Give them one at a time, or say what applies.`,
        ]),
    ...(hasOthers
      ? [
          `${bundles.length === 1 ? first : names}: other files are given too: its phrasebook and settings apply to all, its choice of pair and time to none.`,
        ]
      : []),
  ];
}
