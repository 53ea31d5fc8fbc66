import type { Fleet } from '../vocabulary.ts';
import { cautions } from './cautions.ts';
import { markdown } from './escape.ts';
import { type FleetSection, howComputedTitle } from './fleet-section.ts';
import { fleetSections } from './fleet-sections.ts';
import { fleetSentences } from './fleet-sentences.ts';
import { table } from './markdown-table.ts';
import { notKnownBlocks } from './not-known-markdown.ts';
import type { ReportOptions } from './report-options.ts';
import { onPaper } from './shown-table.ts';
import { sayCount } from './words.ts';

/** The review of a fleet as Markdown (CommonMark with tables), for a ticket or a mail. */
export function fleetMarkdown(fleet: Fleet, options: ReportOptions): string {
  const [first, ...rest] = fleetSentences(fleet);
  const blocks = [
    `# Fleet review: ${sayCount(fleet.pairs.length, 'pair')}`,
    ...notKnownBlocks(fleet),
    `**${markdown(first)}**`,
    ...rest.map(markdown),
    ...fleetSections(fleet, options.zone).flatMap(question),
    '## Cautions',
    cautions.map((c) => `- ${c}`).join('\n'),
    '## Files',
    table(
      ['File', 'Layout', 'Rows', 'SHA-256'],
      fleet.inputs.map((i) => [markdown(i.file), markdown(i.layout), String(i.rows.read), i.sha256]),
    ),
    `Made by Steadypair ${markdown(options.version)}.`,
  ];
  return `${blocks.join('\n\n')}\n`;
}

function question({ title, figures, table: whole, howComputed }: FleetSection): readonly string[] {
  const shown = onPaper(whole);
  return [
    `## ${markdown(title)}`,
    ...figures.map(({ caption }) => markdown(caption)),
    table(
      shown.columns.map((c) => markdown(c.title)),
      shown.rows.map(({ cells }) =>
        cells.map((c) => (c.severity === null ? markdown(c.text) : `**${markdown(c.text)}**`)),
      ),
    ),
    ...(shown.note === '' ? [] : [markdown(shown.note)]),
    `**${howComputedTitle}.** ${markdown(howComputed)}`,
  ];
}
