// Names of months and days as Unicode CLDR 48 prints them (gregorian calendar, wide and abbreviated, with the regional forms of
// de-AT, fr-CA and en-GB), and what is written for want of an accent or a key; the latter common practice, no source.

/** By month: English, German, French, Spanish, Portuguese, Italian, without accents. */
const monthSpellings = [
  'jan january januar jaenner janner jaen jann janv janvier ene enero janeiro gen gennaio',
  'feb february februar feber fevr fev fevrier febrero fevereiro febbraio',
  'mar march marz maerz mrz mars marzo marco',
  'apr april avr avril abr abril aprile',
  'may mai mayo maio mag maggio',
  'jun june juni juin junio junho giu giugno',
  'jul july juli juil juill juillet julio julho lug luglio',
  'aug august aou aout ago agosto',
  'sep sept september septembre septiembre set setiembre setembro settembre',
  'oct october okt oktober octobre octubre out outubro ott ottobre',
  'nov november novembre noviembre novembro',
  'dec december dez dezember decembre dic diciembre dezembro dicembre',
];

/** By day, Monday first. `mar` is a Tuesday too: a whole date must follow, or it is March. */
const weekdaySpellings = [
  'mon monday mo montag lun lundi lunes seg segunda segunda-feira lunedi',
  'tue tues tuesday di dienstag mar mardi martes ter terca terca-feira martedi',
  'wed wednesday mi mittwoch mer mercredi mie miercoles qua quarta quarta-feira mercoledi',
  'thu thur thurs thursday do donnerstag jeu jeudi jue jueves qui quinta quinta-feira gio giovedi',
  'fri friday fr freitag ven vendredi vie viernes sex sexta sexta-feira venerdi',
  'sat saturday sa samstag sonnabend sam samedi sab sabado sabato',
  'sun sunday so sonntag dim dimanche dom domingo domenica',
];

/** What stands between a date and its clock: `at`, `um`, `à`, `a las`, `às`, `alle ore`. */
const joinerSpellings = 'at um a las as alle ore';

const monthOf: ReadonlyMap<string, number> = new Map(
  monthSpellings.flatMap((words, index) => words.split(' ').map((word) => [word, index + 1] as const)),
);
const weekdays: ReadonlySet<string> = new Set(weekdaySpellings.flatMap((words) => words.split(' ')));
const joiners: ReadonlySet<string> = new Set(joinerSpellings.split(' '));

/** 1 to 12 for the name of a month in any of the six languages, in any case, with or without accents; 0 for other words. */
export function monthNamed(word: string): number {
  return monthOf.get(word) ?? monthOf.get(plainLetters(word)) ?? 0;
}

/** Whether a word is the name of a day of the week in any of the six languages. */
export function isWeekday(word: string): boolean {
  return weekdays.has(plainLetters(word));
}

/** Whether a word may stand between a date and its clock. */
export function isJoiner(word: string): boolean {
  return joiners.has(plainLetters(word));
}

/** Lower case without accents, so that `Março`, `marco` and a letter with its accent apart are one. */
export function plainLetters(word: string): string {
  return word
    .normalize('NFD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase();
}

/** Where the letters that begin at `at` end; accents that stand apart from their letter are among them. */
export function lettersEnd(text: string, at: number): number {
  let end = at;
  while (isLetter(text.charCodeAt(end))) end += 1;
  return end;
}

function isLetter(code: number): boolean {
  const small = code | 32;
  if (small >= 97 && small <= 122 && code < 128) return true;
  return code >= 0xc0 && code <= 0x36f && code !== 0xd7 && code !== 0xf7;
}

/** A blank, a tab, or one of the blanks that do not break a line. */
export function isBlank(code: number): boolean {
  return code === 32 || code === 9 || code === 0xa0 || code === 0x202f || code === 0x2009;
}

/** Where the blanks that begin at `at` end. */
export function pastBlanks(text: string, at: number): number {
  let end = at;
  while (isBlank(text.charCodeAt(end))) end += 1;
  return end;
}
