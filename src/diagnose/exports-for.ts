import { groupBy } from '../timeline/groups.ts';
import type { Gauge, Happening, StateSignal } from '../vocabulary.ts';

type Exports = Record<StateSignal | Gauge, string> & Partial<Record<Happening, string>>;

/** What a plant can export that brings a signal. */
const exportOf: Readonly<Exports> = {
  'partner-ready': 'a log of readiness',
  'partner-present': 'a log of presence',
  role: 'a log of the roles',
  light: 'a log of the lights',
  'link-a': 'the log of both networks',
  'link-b': 'the log of both networks',
  links: 'the log of both networks',
  firmware: 'the identity of both modules',
  model: 'the identity of both modules',
  serial: 'the identity of both modules',
  'sync-start': 'the event journal of the standby',
  'sync-failed': 'the event journal of the standby',
  restart: 'the event journal of the standby',
  configuration: 'the state of the configuration',
  supply: 'the alarms of the supply',
  load: 'a poll of load and memory',
  'free-memory': 'a poll of load and memory',
};

const exports: ReadonlyMap<string, string> = new Map(Object.entries(exportOf));

/** The exports that would bring some signals, each named with those it is wanted for, in the order of the signals. */
export function exportsFor(signals: readonly string[]): readonly string[] {
  const wanted = signals.flatMap((signal) => {
    const name = exports.get(signal);
    return name === undefined ? [] : [{ signal, name }];
  });
  return [...groupBy(wanted, ({ name }) => name)].map(
    ([name, wants]) => `${name} (${wants.map(({ signal }) => signal).join(', ')})`,
  );
}
