import { isStateSignal, type Signal, type Subject } from '../../vocabulary.ts';
import { detached } from '../bytes/decode.ts';
import { oppositeOf } from './opposites.ts';
import type { MeaningRule, Place } from './phrasebook-rules.ts';
import type { Matched } from './rule-finder.ts';
import { subjectMeant } from './spoken-subjects.ts';
import { valueMeant } from './values.ts';

export interface Understood {
  readonly subject: Subject;
  readonly signal: Signal;
  readonly value: string | null;
}

/** A message that a rule fits, and why it says nothing all the same. */
export interface Unclear {
  readonly kind: 'unclear';
  /** `off`: what it says where its condition no longer stands; `other`: which half is the other one. */
  readonly lacks: 'off' | 'other';
  readonly place: Place;
  readonly signal: Signal;
}

/**
 * What a message means, one thing or several; that it is known to mean nothing; or what of it is not known. `message`: no rule
 * fits it, nor is it one to ignore; `value`: a rule fits, and what it finds there is not known.
 */
export type Meaning = readonly Understood[] | 'ignored' | 'unit' | 'message' | 'value' | Unclear;

/** True where a message says something. */
export function isMeant(meant: Meaning): meant is readonly Understood[] {
  return Array.isArray(meant);
}

/** All that a message says: if one thing of it is not understood, the message is not. */
export function meaningOf(unit: Subject, found: Matched, message: string, isOff: boolean): Meaning {
  const meant: Understood[] = [];
  for (const said of found.rule.means) {
    const one = meaning(unit, said, found, message, isOff);
    if (one === 'ignored') continue;
    if (typeof one === 'string' || 'kind' in one) return one;
    meant.push(one);
  }
  return meant.length === 0 ? 'ignored' : meant;
}

function meaning(
  unit: Subject,
  said: MeaningRule,
  { rule, groups }: Matched,
  message: string,
  isOff: boolean,
): Understood | 'ignored' | 'value' | Unclear {
  const { signal, off } = said;
  if (isOff && off === 'ignore') return 'ignored';
  const subject = subjectMeant(unit, said, groups, message, rule.place);
  if (subject === 'other') return { kind: 'unclear', lacks: 'other', place: rule.place, signal };
  if (subject === null) return 'value';
  const text = said.value ?? groups.value ?? '';
  const unclear: Unclear = { kind: 'unclear', lacks: 'off', place: rule.place, signal };
  if (!isStateSignal(signal)) {
    // What happened does not happen again where its condition ends: plain English knows that, a site has to say so.
    if (isOff && off === undefined) return rule.place === null ? 'ignored' : unclear;
    const plain = isOff && off !== undefined ? off : text;
    const told = signal === 'note' || signal === 'fault' ? (plain === '' ? message : plain) : plain;
    return { subject, signal, value: told === '' ? null : detached(told) };
  }
  const stands = said.value ?? valueMeant(signal, said.values, text);
  if (stands === undefined || stands === '') return 'value';
  const value = isOff ? (off ?? oppositeOf(signal, stands)) : stands;
  return value === null ? unclear : { subject, signal, value: detached(value) };
}
