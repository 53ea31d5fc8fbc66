/** What a plant can export, and the signals that it would bring. */
const exports: readonly { readonly name: string; readonly signals: readonly string[] }[] = [
  { name: 'a log of readiness', signals: ['partner-ready'] },
  { name: 'a log of presence', signals: ['partner-present'] },
  { name: 'a log of the roles', signals: ['role'] },
  { name: 'the log of both networks', signals: ['link-a', 'link-b', 'links'] },
  { name: 'the identity of both modules', signals: ['firmware', 'model', 'serial'] },
  { name: 'the event journal of the standby', signals: ['sync-start', 'sync-failed', 'restart'] },
  { name: 'the state of the configuration', signals: ['configuration'] },
  { name: 'the alarms of the supply', signals: ['supply'] },
  { name: 'a poll of load and memory', signals: ['load', 'free-memory'] },
];

/** The exports that would bring some signals, each named with those it is wanted for, in the order of the signals. */
export function exportsFor(signals: readonly string[]): readonly string[] {
  const wanted = exports
    .map(({ name, signals: brings }) => ({ name, wants: signals.filter((s) => brings.includes(s)) }))
    .filter(({ wants }) => wants.length > 0);
  const place = (wants: readonly string[]): number => Math.min(...wants.map((s) => signals.indexOf(s)));
  return wanted
    .toSorted((a, b) => place(a.wants) - place(b.wants))
    .map(({ name, wants }) => `${name} (${wants.join(', ')})`);
}
