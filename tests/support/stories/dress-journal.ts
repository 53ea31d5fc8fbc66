import { inOrder, journalCsv, type Message, messagesOf, textLog } from '../../../samples/exports.ts';
import { fieldNotes } from '../../../samples/lines.ts';
import { halfSignals, pairSignals } from '../../../samples/polls.ts';
import type { Random } from '../../../samples/random.ts';
import type { StampStyle } from '../../../samples/stamps.ts';
import type { Story } from '../../../samples/story.ts';
import { plain, type Wording } from '../../../samples/wordings.ts';
import type { DressedFile, Source } from './dressing.ts';

/** How a journal is written; what is left open is plain English, a table, milliseconds or whole seconds by chance. */
export interface JournalStyle {
  readonly file: string;
  readonly wording?: Wording;
  readonly columns?: readonly string[];
  readonly form?: 'table' | 'text';
  /** Signals that it never tells. */
  readonly untold?: ReadonlySet<string>;
  /** What it makes of all messages of the story; all of them unless said. */
  of?(messages: readonly Message[]): readonly Message[];
}

/** A journal of a story, and what it can show. */
export function dressJournal(story: Story, style: JournalStyle, random: Random): DressedFile {
  const { file, columns = ['time', 'unit', 'message'], form = 'table', untold = new Set() } = style;
  const { wording = plain, of = (messages) => messages } = style;
  const { stamp, resolutionSeconds } = drawStamp(random);
  const ordinary = ordinaryOf(story, wording.unit(story.pair, null), random);
  const telling = (isTold: (signal: string) => boolean): readonly Message[] =>
    messagesOf(story, tellingOnly(wording, isTold));
  const messages = of(inOrder([...telling((signal) => !untold.has(signal)), ...ordinary]));
  const text = form === 'text' ? textLog(messages, stamp) : journalCsv(messages, columns, ',', stamp);
  const known = new Set([...halfSignals, ...pairSignals, ...story.events.map((e) => e.signal)]);
  const signals = [...known].filter(
    (s) => !untold.has(s) && of(telling((signal) => signal === s)).length > 0,
  );
  return {
    text,
    source: {
      file,
      kind: 'journal',
      signals: new Set(signals),
      spacingSeconds: 0,
      resolutionSeconds,
      aheadSeconds: 0,
    },
  };
}

/** A wording that also knows faults, and speaks of some signals alone. */
function tellingOnly(wording: Wording, isTold: (signal: string) => boolean): Wording {
  return {
    ...wording,
    message(signal, value) {
      if (!isTold(signal)) return null;
      return signal === 'fault' ? 'hardware fault' : wording.message(signal, value);
    },
  };
}

/** What any journal holds besides, up to its end: nobody stops it as the soak is over. */
function ordinaryOf({ from, to }: Story, unit: string, random: Random): readonly Message[] {
  const times = [Math.floor(from + (to - from) * random()), to];
  return times.map((time, index) => ({
    time,
    unit,
    text: `user Operator 3 logged ${index === 0 ? 'on' : 'off'}`,
  }));
}

/** How a file prints its stamps, by chance; in UTC, with the offset or without. */
export function drawStamp(
  random: Random,
): { readonly stamp: StampStyle } & Pick<Source, 'resolutionSeconds'> {
  const decimals = random() < 0.5 ? 3 : 0;
  const form = random() < 0.5 ? 'iso' : 'iso-offset';
  return {
    stamp: { form, zone: 'UTC', decimals },
    resolutionSeconds: decimals === 3 ? 0 : 1,
  };
}

/** What a technician wrote of a story: the minute of each act, and nothing else. */
export function dressNotes(story: Story, file: string): DressedFile {
  const noted = ['removed', 'inserted', 'reflash-start', 'reflash-end', 'switchover-command'];
  const signals = new Set(story.events.map((e) => e.signal).filter((signal) => noted.includes(signal)));
  const source = {
    file,
    kind: 'notes',
    signals,
    spacingSeconds: 0,
    resolutionSeconds: 60,
    aheadSeconds: 0,
  } as const;
  return { text: fieldNotes(story, 'UTC'), source };
}
