import {
  type Attempt,
  type Instant,
  type Sentence,
  type Stage,
  sayDuration,
  sayTimes,
  type TimelineEvent,
} from '../vocabulary.ts';
import { sayCounts } from './say-counts.ts';
import type { Standing } from './standing.ts';

/** What the first sentence of an answer says of a pair. */
export interface Opening {
  readonly pair: string;
  readonly standing: Standing;
  /** The log of the pair, from its first to its last line. */
  readonly logFrom: number;
  readonly logEnd: number;
  /** A ready partner that has not held for so long may be lost at once. */
  readonly holdSeconds: number;
  /** The attempts since it stands so. */
  readonly attempts: readonly Attempt[];
  readonly half: string | null;
  readonly stage: Stage | null;
  /** The removal of the half, where no module was put in since. */
  readonly removal: TimelineEvent | null;
}

/** The words for what readiness rests on: a second module that is seen is not called ready. */
const words = {
  'partner-ready': {
    has: 'has had a ready partner',
    had: 'had a ready partner',
    hasNone: 'has had no ready partner',
    hadNone: 'had no ready partner',
    lost: 'the partner was lost',
    justHas: 'got a ready partner',
    justLost: 'lost its ready partner',
    end: '.',
  },
  'partner-present': {
    has: 'has seen a second module',
    had: 'saw a second module',
    hasNone: 'has seen no second module',
    hadNone: 'saw no second module',
    lost: 'the module dropped out',
    justHas: 'saw a second module again',
    justLost: 'lost its second module',
    end: '; readiness was never logged.',
  },
} as const;
type Words = (typeof words)[keyof typeof words];

/** How the pair stands now and since when, with the losses or attempts that go with it. Source: design.md, section 6. */
export function sayOpening(opening: Opening): Sentence {
  const { pair, standing, logFrom, logEnd, attempts } = opening;
  const { signal, since, value, seconds } = standing;
  if (signal === null || since === null)
    return [
      `${pair}: readiness was never logged in ${sayDuration((logEnd - logFrom) / 1000)} of log; ${sayCounts(attempts)}; `,
      ...sayReached(opening),
      '.',
    ];
  const said = words[signal];
  return value === 'yes'
    ? [...sayHas(opening, since, said), ...sayDropOuts(standing), ...sayBefore(standing, said), said.end]
    : [
        ...sayHasNone(opening, since, said),
        `; ${sayCounts(attempts, seconds < 1 ? '' : ' in that time')}; `,
        ...sayReached(opening),
        said.end,
      ];
}

/** The losses before the one that a pair stands in, as a sentence; none without. */
export function sayEarlier({ signal, value, losses }: Standing): readonly Sentence[] {
  if (signal === null || value !== 'no' || losses.length === 0) return [];
  const [first = '', ...rest] = sayLosses(losses, words[signal]);
  return [[`Before that ${first}`, ...rest, '.']];
}

function sayHas(
  { pair, standing, holdSeconds, logEnd }: Opening,
  since: TimelineEvent,
  said: Words,
): Sentence {
  const { signal, seconds, lastRead, endedBy } = standing;
  const lasting = `${sayDuration(seconds)}${since.initial ? ' at least' : ''}${sayUnseen(standing)}`;
  if (endedBy !== null) {
    const after = sayDuration((logEnd - endedBy.time) / 1000);
    return [
      `${pair} ${said.had} until `,
      at(endedBy),
      `, when ${sayWork(endedBy)}; nothing was logged about it in the ${after} after that`,
    ];
  }
  if (lastRead !== null)
    return [`${pair} ${said.had} when last read, at `, exact(lastRead), `, for ${lasting} by then`];
  if (seconds < 1 && !since.initial)
    return [
      `${pair} ${said.justHas} in the last second of its log, at `,
      at(since),
      signal === 'partner-ready' ? `; it must stay ready for ${sayDuration(holdSeconds)}` : '',
    ];
  // A module that is seen need not hold: nobody calls it ready. What was so before the log began may have held by then.
  const isShort = signal === 'partner-ready' && seconds < holdSeconds && !since.initial;
  const short = isShort ? `, less than the ${sayDuration(holdSeconds)} needed` : '';
  return [`${pair} ${said.has} for the last ${lasting}${short}`];
}

function sayWork({ signal, half }: TimelineEvent): string {
  const which = half === null ? 'a half' : `half ${half}`;
  if (signal === 'restart') return `${which} restarted`;
  if (signal === 'inserted') return `a module was put into ${which}`;
  return signal === 'removed' ? `${which} was removed` : `${which} was reflashed`;
}

/** A partner that was not seen was not ready, but no line says that either. */
function sayDropOuts({ dropOuts }: Standing): Sentence {
  const [first] = dropOuts;
  if (first === undefined) return [];
  const [when, on] = dropOuts.length === 1 ? ['at', ''] : ['from', ' on'];
  return [
    `, though its second module dropped out ${sayTimes(dropOuts.length)} in that time, ${when} `,
    at(first.start),
    on,
  ];
}

function sayHasNone({ pair, standing }: Opening, since: TimelineEvent, said: Words): Sentence {
  const { seconds, lastRead } = standing;
  const lasting = `${sayDuration(seconds)}${since.initial ? ' at least' : ''}`;
  const from = saySince(since);
  if (lastRead !== null)
    return [
      `${pair} ${said.hadNone} when last read, at `,
      exact(lastRead),
      `, for ${lasting} by then`,
      ...from,
      sayUnseen(standing),
    ];
  // Within the second of its loss nothing has lasted yet.
  if (seconds < 1 && !since.initial)
    return [`${pair} ${said.justLost} in the last second of its log, at `, at(since)];
  return [`${pair} ${said.hasNone} for ${lasting}`, ...from, sayUnseen(standing)];
}

function saySince(since: TimelineEvent): Sentence {
  if (since.initial) return [', since before its log began'];
  return since.signal === 'removed' ? [`, since ${sayWork(since)} at `, at(since)] : [', since ', at(since)];
}

function sayUnseen({ unseenSeconds }: Standing): string {
  return unseenSeconds === 0 ? '' : ` (${sayDuration(unseenSeconds)} of it not observed)`;
}

function sayBefore({ losses }: Standing, said: Words): Sentence {
  if (losses.length === 0) return [];
  const [first = '', ...rest] = sayLosses(losses, said);
  return [`; before that ${first}`, ...rest];
}

/** Those that a restart brought are counted apart. */
function sayLosses(losses: Standing['losses'], said: Words): Sentence {
  const counted = losses.filter((l) => l.kind === 'counted').length;
  const restarts = losses.length - counted;
  const [first] = losses;
  if (first === undefined) return [];
  const times =
    counted === 0
      ? `${sayTimes(restarts)} with a restart`
      : `${sayTimes(counted)}${restarts === 0 ? '' : `, and ${sayTimes(restarts)} with a restart`}`;
  return losses.length === 1
    ? [`${said.lost} ${times}, at `, at(first.event)]
    : [`${said.lost} ${times}, from `, at(first.event), ' on'];
}

function sayReached({ half, stage, attempts, removal, standing }: Opening): Sentence {
  const who = half === null ? 'the standby' : `half ${half}`;
  if (removal !== null && removal !== standing.since)
    return [`${who} has been out since its removal at `, at(removal)];
  if (stage === null) return ['the stage it reached was not logged'];
  if (stage === 'absent') return [`${who} is absent`];
  // A mere wait after a loss reaches nothing.
  const isAttempt = attempts.some((a) => a.cause !== 'loss');
  return [isAttempt ? `${who} reached stage ${stage}` : `${who} is at stage ${stage}`];
}

function at({ time, earliest }: Instant): Instant {
  return { time, earliest };
}

function exact(time: number): Instant {
  return { time, earliest: time };
}
