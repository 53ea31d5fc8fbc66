import { describe, expect, test } from 'vitest';
import { entryReader } from '../../../../src/import/phrasebook/entries.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';
import { stateSignals, stateValues } from '../../../../src/vocabulary.ts';

const unit = { pair: 'RO1', half: 'B', role: null };

function said(message: string, yaml: string | null = null): string {
  const found = entryReader(readPhrasebook('phrasebook.yaml', yaml)).read(unit, message);
  if (found === 'ignored') return found;
  const said = Array.isArray(found) ? found : [];
  return (
    said.map(({ signal, value }) => (value === null ? signal : `${signal} ${value}`)).join(', ') || 'unknown'
  );
}

describe('plain English', () => {
  test.each([
    ['partner ready', 'partner-ready yes'],
    ['Partner is ready after 141 s', 'partner-ready yes'],
    ['partner-ready = no', 'partner-ready no'],
    ['partner ready: false', 'partner-ready no'],
    ['partner no longer synchronised', 'partner-ready no'],
    ['partner absent', 'partner-present no'],
    ['partner not present', 'partner-present no'],
    ['light on', 'light steady'],
    ['standby light is flashing', 'light flashing'],
    ['link a down', 'link-a down'],
    ['link-b is up', 'link-b up'],
    ['links crossed', 'links crossed'],
    ['configuration pending', 'configuration pending'],
    ['supply ok', 'supply good'],
    ['supply fault', 'supply fault'],
    ['role changed from standby to active', 'role active'],
    ['firmware 6.4.1', 'firmware 6.4.1'],
    ['firmware release is v6.4.1.', 'firmware v6.4.1'],
    ['model Tern-4', 'model Tern-4'],
    ['serial number: T4-0031', 'serial T4-0031'],
    ['switchover command by operator', 'switchover-command'],
    ['switchover completed', 'switchover'],
    ['sync failed: no answer', 'sync-failed'],
    ['synchronisation started', 'sync-start'],
    ['reflash start', 'reflash-start'],
    ['reflash completed (6.4.1)', 'reflash-end'],
    ['module restart', 'restart'],
    ['standby module removed from slot B', 'removed'],
    ['RO1-B: module has been inserted', 'inserted'],
    ['processor fault', 'fault processor fault'],
    ['INFO light off', 'light off'],
    ['ctl[312]: partner not ready', 'partner-ready no'],
    ['Partner status: ready', 'partner-ready yes'],
    ['partner state = not ready', 'partner-ready no'],
    ['Partner lost', 'partner-ready no'],
    ['Role change: now STANDBY', 'role standby'],
    ['Status LED steady', 'light steady'],
    ['Firmware update started (7.1.0 -> 7.2.1)', 'reflash-start'],
    ['fw upgrade finished', 'reflash-end'],
    ['partnerReady', 'partner-ready yes'],
    ['PartnerNotReady', 'partner-ready no'],
    ['linkA: down', 'link-a down'],
    ['partnerReadyTimeout', 'unknown'],
  ])('"%s" says %s', (message, expected) => {
    expect(said(message)).toBe(expected);
  });

  test('every state is understood by its own name and each of its values', () => {
    const spoken = stateSignals.flatMap((signal) =>
      (stateValues[signal] ?? ['X-1']).map((value) => `${signal} ${value}`),
    );
    expect(spoken.filter((message) => said(message) !== message)).toEqual([]);
  });

  test.each([
    'alarm removed',
    'forced value removed',
    'module not inserted',
    'removed: no',
    'partner ready timeout',
    'waiting for partner ready',
    'partner ready = ?',
    'switchover inhibited',
    'switchover command rejected',
    'restart inhibit set',
    'restart count 5',
    'operator logged on after restart',
    'no fault',
    'fault cleared',
    'supply fault cleared',
    'firmware: update available',
    'firmware 6.4.1 required',
    'model mismatch',
    'light test',
    'role conflict',
  ])('"%s" is not guessed at', (message) => {
    expect(said(message)).toBe('unknown');
  });
});

describe('what the site says of a wording', () => {
  const own = 'messages: [{ when: "^unit out", signal: removed }]\nignore: ["^unit", "^partner ready"]\n';
  test.each([
    ['unit out', 'removed'],
    ['unit in', 'ignored'],
    ['partner ready', 'ignored'],
    ['partner not ready', 'partner-ready no'],
  ])('comes before plain English: "%s" is %s', (message, expected) => {
    expect(said(message, own)).toBe(expected);
  });
});

describe('which half plain words are about', () => {
  const about = (half: string, message: string): string => {
    const found = entryReader(readPhrasebook('phrasebook.yaml', null)).read({ ...unit, half }, message);
    const [one] = Array.isArray(found) ? found : [];
    return one === undefined ? 'unknown' : `${one.signal} of ${one.subject.half}`;
  };
  test.each([
    // The half that speaks may tell of the other.
    ['A', 'Module in slot B removed', 'removed of B'],
    ['A', 'module B inserted', 'inserted of B'],
    ['A', 'removed from slot B', 'removed of B'],
    ['1', 'Half 2: module restart', 'restart of 2'],
    ['A', 'RO1-B: module has been inserted', 'inserted of B'],
    ['A', 'RO1-B light steady', 'light of B'],
    ['A', 'module removed', 'removed of A'],
    ['B', 'slot B removed', 'removed of B'],
    ['A', 'serial RO1-2', 'serial of A'],
    // What is neither is none of the pair's modules, or nobody knows.
    ['A', 'Module in slot 7 removed', 'unknown'],
    ['A', 'Module 12 restart', 'unknown'],
    ['A', 'RO8-B module removed', 'unknown'],
  ])('half %s says "%s": %s', (half, message, expected) => {
    expect(about(half, message)).toBe(expected);
  });
});

describe('plain words of what is not so, or of something else, are not known', () => {
  test.each([
    'switchover at 10:00 planned',
    'switchover by operator refused',
    'partner ready in 20 s',
    'switchover in 30 s',
    'role active in simulation',
    'partner absent on simulator',
    'module removed for training',
    'light flashing during test',
    'removed from maintenance list',
    'inserted in work order',
    'restart of the HMI',
  ])('"%s"', (message) => {
    expect(said(message)).toBe('unknown');
  });
  test.each([
    ['partner ready since 08:00', 'partner-ready yes'],
    ['switchover on loss of supply', 'switchover'],
    ['removed from slot B', 'removed'],
    ['module removed from the backplane', 'removed'],
    ['inserted into the rack', 'inserted'],
    ['restart of module B', 'restart'],
    ['restart of the module', 'restart'],
    ['restart of RO1-B after 20 s', 'restart'],
    ['restart by operator', 'restart'],
    ['reflash completed in 141 s', 'reflash-end'],
  ])('"%s" says %s', (message, expected) => {
    expect(said(message)).toBe(expected);
  });
});
