import { isStateSignal, type Subject, stateValues, type Understanding } from '../../vocabulary.ts';
import { plainUnits } from '../phrasebook/built-in-phrasebook.ts';
import { entryReader } from '../phrasebook/entries.ts';
import type { Phrasebook } from '../phrasebook/phrasebook-rules.ts';
import { parameterNamed } from '../phrasebook/plain-parameters.ts';
import { subjectOf } from '../phrasebook/subjects.ts';
import { valueMeant } from '../phrasebook/values.ts';

/** Tells how a phrasebook understands what a log says, and by which of its rules; `null` where it does not. */
export interface Understander {
  message(text: string): Understanding | null;
  /** What a technician wrote is at least a note. */
  note(text: string): Understanding;
  parameter(name: string): Understanding | null;
  value(name: string, value: string): Understanding | null;
  unit(name: string): Understanding | null;
}

const builtIn = 'the built-in words';
/** Whoever says it: what a message means does not depend on the pair. */
const someone: Subject = { pair: 'pair', half: '1', role: null };

export function understander(phrasebook: Phrasebook): Understander {
  const entries = entryReader(phrasebook);
  const ignoredBy = (text: string): Understanding | null => {
    const index = phrasebook.ignore.first(text);
    return index === null ? null : { by: `ignore[${index}]`, signal: null, value: null };
  };
  return {
    message(text) {
      const found = entries.read(someone, text);
      if (found === 'ignored') return ignoredBy(text);
      // Of a line that says several things the first stands for all.
      const [first] = Array.isArray(found) ? found : [];
      if (first === undefined) return null;
      const index = phrasebook.messages.findIndex(({ pattern }) => pattern.match(text) !== null);
      return { by: index < 0 ? builtIn : `messages[${index}]`, signal: first.signal, value: first.value };
    },
    note(text) {
      const [first] = entries.readNote(someone, text);
      const { signal, value } = first ?? { signal: 'note', value: text };
      const index = phrasebook.messages.findIndex(({ pattern }) => pattern.match(text) !== null);
      return { by: index < 0 ? builtIn : `messages[${index}]`, signal, value };
    },
    parameter(name) {
      const rule = parameterNamed(phrasebook, name);
      if (rule === undefined) return ignoredBy(`parameter ${name}`);
      const { signal, subject } = rule;
      return {
        by: phrasebook.parameters.has(name) ? `parameters.${name}` : builtIn,
        signal,
        value: null,
        subject,
      };
    },
    value(name, value) {
      const rule = parameterNamed(phrasebook, name);
      const meant = rule === undefined ? undefined : valueMeant(rule.signal, rule.values, value);
      if (rule === undefined || meant === undefined) return ignoredBy(`${name} = ${value}`);
      const isOwn = Object.hasOwn(rule.values, value) && phrasebook.parameters.has(name);
      return { by: isOwn ? `parameters.${name}` : builtIn, signal: rule.signal, value: meant };
    },
    unit(name) {
      const subject = subjectOf(phrasebook, { unit: name, half: '', role: '' });
      if (subject === null) return ignoredBy(`unit ${name}`);
      const index = phrasebook.units.findIndex(({ pattern }) => pattern.match(name) !== null);
      const isOwn = index < phrasebook.units.length - plainUnits.length;
      return { by: isOwn ? `units[${index}]` : builtIn, signal: null, value: saySubject(subject) };
    },
  };
}

function saySubject({ pair, half, role }: Subject): string {
  if (half !== null) return `half ${half} of ${pair}`;
  return role === null ? `pair ${pair}` : `the ${role} half of ${pair}`;
}

/** Whether the value of a signal is the text itself, as of firmware. */
export function isTextSignal(signal: string): boolean {
  return isStateSignal(signal) && stateValues[signal] === null;
}
