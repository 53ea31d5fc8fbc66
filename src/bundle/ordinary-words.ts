import { readPhrasebook } from '../pipeline.ts';
import { cautions } from '../report/cautions.ts';
import { gauges, happenings, stateSignals, stateValues } from '../vocabulary.ts';
import type { NamedYaml } from './inside.ts';

/** Words of reports and of exports besides those that the rules are made of. */
const others = `active all and any archive at bay bring bundle case cause causes chart check checks clock column command controller
  count critical csv data date day diagnosis during each end engineer error evidence event exposure fail file files finding
  findings firmware fleet for found from half header hour html info input journal key last light line lines log logged logs main
  manifest message minute model module modules name network no none not note notes number off on one operator out over pair pairs
  parameter pass phrasebook plan planned point poll port reading ready report reports reviewer role row rows schema second
  section see serial settings shift show site slot source span standby start statement station status step steps supply swap
  switchover sync synchronised system table technician text the time title to type unit units user value verdict verified
  verify version warning was when width with work yes zone`;

/** Words of this program, of plain English rules and of a phrasebook's wordings, in small letters: no name is masked in their place. */
export function ordinaryWords(phrasebook: NamedYaml | null): ReadonlySet<string> {
  const plain = readPhrasebook('built-in phrasebook', null);
  const site = readPhrasebook(phrasebook?.file ?? 'built-in phrasebook', phrasebook?.text ?? null).own;
  const texts = [
    others,
    ...cautions,
    ...gauges,
    ...happenings,
    ...stateSignals,
    ...Object.values(stateValues).flatMap((values) => (values === null ? [] : [...values])),
    ...plain.plainMessages().map(({ pattern }) => pattern.source),
    ...plain.units.map(({ pattern }) => pattern.source),
    ...plain.parameters.keys(),
    ...wordings(site),
  ];
  return new Set(texts.flatMap((text) => wordsOf(text)));
}

/** What a phrasebook says of wordings: all but what names files and units. */
function wordings(site: ReturnType<typeof readPhrasebook>['own']): readonly string[] {
  const { parameters, messages, ignore, files } = site;
  return [
    ...Object.entries(parameters ?? {}).flatMap(([name, { values }]) =>
      name.startsWith('/') ? [] : [name, ...Object.keys(values ?? {})],
    ),
    ...(messages ?? []).map(({ when }) => when),
    ...(ignore ?? []),
    ...(files ?? []).flatMap(({ columns, states }) => [
      ...Object.values(columns ?? {}).flatMap((name) => (typeof name === 'string' ? [name] : [])),
      ...Object.keys(states ?? {}),
    ]),
  ];
}

/** The words of a text in small letters; those of a pattern without its signs. */
export function wordsOf(text: string): readonly string[] {
  return [...text.replace(/\\[A-Za-z]|\(\?<\w+>/g, ' ').matchAll(/\p{L}{2,}/gu)].map(([word]) =>
    word.toLowerCase(),
  );
}
