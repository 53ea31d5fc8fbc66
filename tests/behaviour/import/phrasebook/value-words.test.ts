/** Words of six languages for the values of signals, and abbreviations of the trade. */
import { describe, expect, test } from 'vitest';
import { entryReader } from '../../../../src/import/phrasebook/entries.ts';
import { builtInParameters, parameterNamed } from '../../../../src/import/phrasebook/plain-parameters.ts';
import { subjectOf } from '../../../../src/import/phrasebook/subjects.ts';
import { foldedWord, spellingsOf } from '../../../../src/import/phrasebook/value-words.ts';
import { valueMeant } from '../../../../src/import/phrasebook/values.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';
import { stateSignals, stateValues } from '../../../../src/vocabulary.ts';

const plain = readPhrasebook('built-in', null);

test('no two words of a signal are one word with two meanings, whatever the language', () => {
  const clashes = stateSignals.flatMap((signal) => {
    const spelt = spellingsOf(signal).map(([word, value]) => [foldedWord(word), value] as const);
    return spelt.flatMap(([word, value], index) =>
      spelt
        .slice(index + 1)
        .filter(([other, meant]) => other === word && meant !== value)
        .map(([other, meant]) => `${signal}: ${other} is ${value} and ${meant}`),
    );
  });
  expect(clashes).toEqual([]);
});

test('every value that a word stands for is one of its signal', () => {
  const wrong = stateSignals.flatMap((signal) => {
    const allowed: readonly string[] = stateValues[signal] ?? [];
    return spellingsOf(signal).filter(([, value]) => !allowed.includes(value));
  });
  expect(wrong).toEqual([]);
});

describe('values in six languages', () => {
  test.each([
    ['role', 'active', 'active aktiv ACTIF activo ativo Attivo act PRI primär'],
    ['role', 'standby', 'standby Bereitschaft Réserve reserve espera riserva stby SBY sec'],
    ['role', 'none', 'keine aucun ninguno nenhum nessuno'],
    ['partner-ready', 'yes', 'yes JA oui sí si SÍ sim sì bereit prêt PRET listo pronto rdy OK vrai'],
    ['partner-ready', 'no', 'no nein non não NAO nok falso absent fehlt'],
    ['partner-present', 'yes', 'present vorhanden présent presente ready'],
    ['partner-present', 'no', 'absent fehlt manquant ausente assente'],
    ['light', 'steady', 'steady dauerhaft fixe fijo fixo fisso on ein allumé acceso'],
    ['light', 'flashing', 'flashing blinkt clignotant parpadeante piscando lampeggiante'],
    ['light', 'off', 'off aus éteint apagado desligado spento'],
    ['link-a', 'up', 'up verbunden connecté conectado connesso'],
    ['link-b', 'down', 'down getrennt déconnecté desconectado disconnesso FLT'],
    ['supply', 'good', 'good gut bon bueno bom buono normal'],
    ['supply', 'fault', 'fault Störung défaut fallo falha guasto NOK'],
    ['configuration', 'current', 'current aktuell actual atual attuale'],
    ['configuration', 'pending', 'pending ausstehend pendiente pendente'],
  ] as const)('%s %s', (signal, value, words) => {
    const meant = words.split(' ').map((word) => [word, valueMeant(signal, {}, word)]);
    expect(meant).toEqual(words.split(' ').map((word) => [word, value]));
  });
  test.each([
    ['partner-ready', 'nicht bereit', 'no'],
    ['partner-ready', 'pas  prêt', 'no'],
    ['partner-ready', 'no listo', 'no'],
    ['partner-ready', 'NÃO PRONTO', 'no'],
    ['configuration', 'à jour', 'current'],
    ['configuration', 'en attente', 'pending'],
    ['role', 'en veille', 'standby'],
    ['partner-ready', 'presto', undefined],
    ['partner-ready', 'present', undefined],
    ['partner-present', 'not ready', undefined],
  ] as const)('%s: %s', (signal, text, value) => expect(valueMeant(signal, {}, text)).toBe(value));
  test("a site's own value comes first", () => {
    expect(valueMeant('light', { aus: 'flashing' }, 'AUS')).toBe('flashing');
  });
});

describe('messages of a signal and its value', () => {
  const reader = entryReader(plain);
  const unit = { pair: 'RO1', half: 'A', role: null };
  test.each([
    ['role aktiv', 'role', 'active'],
    ['role: actif', 'role', 'active'],
    ['RO1-A role stby', 'role', 'standby'],
    ['light clignotant', 'light', 'flashing'],
    ['stby LED éteint', 'light', 'off'],
    ['partner bereit', 'partner-ready', 'yes'],
    ['partner nicht bereit', 'partner-ready', 'no'],
    ['partner pas prêt', 'partner-ready', 'no'],
    ['partner rdy', 'partner-ready', 'yes'],
    ['partner fehlt', 'partner-present', 'no'],
    ['fw ver 6.4.1', 'firmware', '6.4.1'],
    ['sw ver. 6.4.1', 'firmware', '6.4.1'],
    ['S/N T4-00917', 'serial', 'T4-00917'],
    ['PSU NOK', 'supply', 'fault'],
    ['lnk a down', 'link-a', 'down'],
    ['cfg pending', 'configuration', 'pending'],
    ['chg over', 'switchover', null],
    ['app[12]: RO1-B removed', 'removed', null],
    ['S/O', 'switchover', null],
  ] as const)('%s', (message, signal, value) => {
    const found = reader.read(unit, message);
    expect(Array.isArray(found) ? found.map((f) => [f.signal, f.value]) : found).toEqual([[signal, value]]);
  });
  test.each([
    'role actively sought',
    'light aus dem Schrank',
    's/o inhibited',
    'ps 5 of 7',
    'partner no',
    'mta/qmgr[12]: 4711: removed',
    'mta/qmgr[12]: B1F2C3D4: removed',
  ])('%s is not understood', (message) => expect(reader.read(unit, message)).toBe('message'));
});

describe('parameters by their abbreviations', () => {
  test.each([
    ['FW ver', 'firmware'],
    ['SW_VER', 'firmware'],
    ['S/N', 'serial'],
    ['P/N', 'model'],
    ['Stby Rdy', 'partner-ready'],
    ['PSU', 'supply'],
    ['CPU', 'load'],
    ['Cfg', 'configuration'],
    ['Lnk-A', 'link-a'],
    ['Mem', undefined],
    ['Temp', undefined],
  ])('%s', (name, signal) => expect(parameterNamed(plain, name)?.signal).toBe(signal));
  test('none of them is another with a role before it', () => {
    const names = builtInParameters().map(([name]) => name);
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('units in any case', () => {
  const named = (unit: string, yaml: string | null = null): string => {
    const found = subjectOf(readPhrasebook('site.yaml', yaml), { unit, half: '', role: '' });
    return found === null ? 'none' : `${found.pair} ${found.half} ${found.role}`;
  };
  test.each([
    ['ro1-a', 'RO1 A null'],
    ['Ro1/A', 'RO1 A null'],
    ['ro1', 'RO1 null null'],
    ['RO1-STBY', 'RO1 null standby'],
    ['ro1 sec', 'RO1 null standby'],
    ['Pri RO1', 'RO1 null active'],
    ['intake-ab', 'none'],
  ])('%s', (unit, expected) => expect(named(unit)).toBe(expected));
  test("stay apart where a site's own pattern tells them apart", () => {
    const own = 'units: [{ pattern: "^(?<pair>ro1)-(?<half>[ab])$" }]';
    expect([named('ro1-a', own), named('RO1-A', own)]).toEqual(['ro1 a null', 'RO1 A null']);
  });
});
