import { journalCsv, type Message, messagesOf, readingsCsv, textLog } from './exports.ts';
import type { Story } from './story.ts';
import { journalWording, plain, pollWording } from './wordings.ts';

const network: readonly string[] = ['link-a', 'link-b', 'links'];

/**
 * What the station exports of a pair that will not synchronise, each export knowing its part: a poll and a journal that
 * say nothing of the networks, and the network's own log.
 */
export function wontSyncFiles(
  story: Story,
  zone: string,
): readonly { readonly name: string; readonly text: string }[] {
  const poll = readingsCsv(story, {
    spacingSeconds: 60,
    phaseSeconds: 11,
    stamp: { form: 'day-first', zone, decimals: 0 },
    delimiter: ',',
    wording: pollWording,
    load: '.',
  });
  const ordinary: Message[] = [{ time: story.to, unit: 'PRETREAT pair', text: 'daily self-test passed' }];
  const silent = { ...journalWording, message: unlessNetwork(journalWording.message) };
  const only = { ...plain, message: ofNetwork(plain.message) };
  return [
    { name: 'pretreat-poll.csv', text: withoutNetwork(poll) },
    {
      name: 'pretreat-journal.csv',
      text: journalCsv(messagesOf(story, silent, ordinary), ['Logged at', 'Where', 'What'], ';', {
        form: 'iso',
        zone,
        decimals: 3,
      }),
    },
    {
      name: 'pretreat-network.log',
      text: textLog(messagesOf(story, only), { form: 'iso-offset', zone, decimals: 3 }),
    },
  ];
}

type Say = (signal: string, value: string | null) => string | null;

function unlessNetwork(say: Say): Say {
  return (signal, value) => (network.includes(signal) ? null : say(signal, value));
}

function ofNetwork(say: Say): Say {
  return (signal, value) => (network.includes(signal) ? say(signal, value) : null);
}

function withoutNetwork(poll: string): string {
  const names = new Set(network.map((signal) => pollWording.parameter(signal)));
  return poll
    .split('\n')
    .filter((row) => !names.has(row.split(',')[2] ?? ''))
    .join('\n');
}
