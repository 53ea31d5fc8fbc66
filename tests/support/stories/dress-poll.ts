import { halfSignals, pairSignals } from '../../../samples/polls.ts';
import type { Random } from '../../../samples/random.ts';
import type { Story } from '../../../samples/story.ts';
import { plain, type Wording } from '../../../samples/wordings.ts';
import { drawStamp } from './dress-journal.ts';
import type { DressedFile } from './dressing.ts';
import { type Layout, pollText } from './poll-text.ts';

/** How a poll looks at a story; what is left open is drawn by chance. */
export interface LookStyle {
  readonly file: string;
  readonly wording?: Wording;
  readonly layout?: Layout;
}

const [least, most] = [2, 120];

/** A spacing between 2 s and 120 s, short ones as likely as long ones by their ratio. */
function drawSpacing(random: Random): number {
  return Math.round(least * (most / least) ** random());
}

/** A poll of a story, and what it can show. */
export function dressPoll(story: Story, style: LookStyle, random: Random): DressedFile {
  const spacing = drawSpacing(random);
  const phaseSeconds = Math.floor(1000 * spacing * random()) / 1000;
  const jitterSeconds = random() < 0.5 ? 0 : 0.3 * spacing * random();
  const { stamp, resolutionSeconds } = drawStamp(random);
  const drawn = random() < 0.6 ? 'snapshots' : 'readings';
  const text = pollText(story, style.layout ?? drawn, {
    spacingSeconds: spacing,
    phaseSeconds,
    jitterSeconds,
    stamp,
    delimiter: ',',
    wording: style.wording ?? plain,
    seed: Math.floor(1e6 * random()),
  });
  return {
    text,
    source: {
      file: style.file,
      kind: 'poll',
      signals: new Set([...halfSignals, ...pairSignals]),
      spacingSeconds: spacing + jitterSeconds,
      resolutionSeconds,
      aheadSeconds: 0,
    },
  };
}
