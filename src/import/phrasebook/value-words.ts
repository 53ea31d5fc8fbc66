import type { StateSignal } from '../../vocabulary.ts';
import { plainLetters } from '../clock/calendar-words.ts';

// What values are called in English, German, French, Spanish, Portuguese and Italian, and their abbreviations in the trade
// (common practice, no source). Yes and no as Unicode CLDR 48 has them (posix/messages). A word stands for one value of its
// signal in all six languages; one that does not is left out: French and Spanish "presto", the letters `o` and `s`.

/** The words of each value; by language, abbreviations first. */
type Words = Readonly<Record<string, readonly string[]>>;

const answers: Words = {
  yes: ['1 y j ok', 'yes true on', 'ja wahr ein', 'oui vrai', 'sí verdadero', 'sim verdadeiro', 'sì vero'],
  no: ['0 n nok', 'no false off', 'nein falsch aus', 'non faux', 'falso', 'não'],
};

/** What is said of a partner that could take over. */
const readyWords: Words = {
  yes: [
    'rdy',
    'ready synchronised synchronized',
    'bereit synchron synchronisiert',
    'prêt prête synchronisé synchronisée',
    'listo lista preparado preparada sincronizado sincronizada',
    'pronto pronta',
    'sincronizzato sincronizzata',
  ],
  no: [
    'lost unsynchronised unsynchronized',
    'unsynchron',
    'désynchronisé désynchronisée',
    'desincronizado desincronizada',
  ],
};

const presentWords: Words = {
  yes: ['present', 'vorhanden', 'présent présente', 'presente'],
  no: ['absent missing', 'fehlt fehlend', 'absente manquant manquante', 'ausente', 'assente mancante'],
};

const linkWords: Words = {
  up: [
    '1 ok lnk',
    'up connected',
    'verbunden',
    'connecté connectée',
    'conectado conectada',
    'connesso connessa',
  ],
  down: [
    '0 nok flt',
    'down lost disconnected fault',
    'getrennt unterbrochen',
    'déconnecté déconnectée',
    'desconectado desconectada',
    'disconnesso disconnessa scollegato scollegata',
  ],
};

const words: Readonly<Partial<Record<StateSignal, Words>>> = {
  role: {
    active: [
      'act pri',
      'active primary',
      'aktiv aktive primär',
      'actif primaire',
      'activo activa primario primaria',
      'ativo ativa primário primária',
      'attivo attiva',
    ],
    standby: [
      'stby sby sec',
      'standby secondary backup',
      'bereitschaft reserve sekundär',
      'veille secondaire secours réserve',
      'espera reserva respaldo secundario secundaria',
      'secundário secundária',
      'attesa riserva secondario secondaria',
    ],
    none: [
      '-',
      'none',
      'keine keiner',
      'aucun aucune',
      'ninguno ninguna',
      'nenhum nenhuma',
      'nessuno nessuna',
      // Its module is out; "missing" may be said of the reading.
      'absent absente ausente assente',
    ],
  },
  light: {
    steady: [
      'steady on solid',
      'dauerhaft dauernd dauerlicht leuchtet ein an',
      'fixe allumé allumée',
      'fijo fija encendido encendida',
      'fixo fixa aceso acesa',
      'fisso fissa acceso accesa',
    ],
    flashing: [
      'flashing blinking',
      'blinkt blinkend',
      'clignotant clignotante clignote',
      'parpadeante parpadeando parpadea intermitente',
      'piscando pisca',
      'lampeggiante lampeggia',
    ],
    off: [
      'off dark',
      'aus dunkel',
      'éteint éteinte',
      'apagado apagada',
      'desligado desligada',
      'spento spenta',
    ],
  },
  'link-a': linkWords,
  'link-b': linkWords,
  links: {
    straight: ['straight', 'gerade', 'droit droits', 'directo directos', 'direto diretos', 'diretto diretti'],
    crossed: ['crossed', 'gekreuzt', 'croisé croisés', 'cruzado cruzados', 'incrociato incrociati'],
  },
  configuration: {
    current: ['current', 'aktuell', 'actuelle', 'actual', 'atual', 'attuale aggiornata'],
    pending: ['pending', 'ausstehend', 'pendiente', 'pendente'],
  },
  supply: {
    good: ['ok', 'good normal', 'gut', 'bon bonne', 'bueno buena', 'bom boa', 'buono buona normale'],
    fault: [
      'nok flt',
      'fault failed',
      'störung gestört defekt fehler',
      'défaut panne',
      'fallo falla defecto',
      'falha avaria',
      'guasto errore',
    ],
  },
};

/** What is written with a blank. */
const phrases: Readonly<Partial<Record<StateSignal, Words>>> = {
  role: { standby: ['hot standby', 'in bereitschaft', 'en veille', 'en espera', 'em espera', 'in attesa'] },
  configuration: { current: ['up to date', 'à jour'], pending: ['en attente', 'in attesa'] },
  supply: { good: ['in ordnung'] },
};

/** How six languages say that it is not so. */
export const negations = ['not', 'no longer', 'nicht', 'nicht mehr', 'pas', 'non', 'no', 'não'] as const;

function negated(words: Words): readonly string[] {
  return negations.flatMap((not) => wordsOf(words.yes).map((word) => `${not} ${word}`));
}

function wordsOf(lines: readonly string[] | undefined): readonly string[] {
  return (lines ?? []).flatMap((line) => line.split(' '));
}

/** The words that say a partner is ready or present, and those that say it is not; without yes and no. */
export const partnerWords = {
  'partner-ready': { yes: wordsOf(readyWords.yes), no: wordsOf(readyWords.no) },
  'partner-present': { yes: wordsOf(presentWords.yes), no: wordsOf(presentWords.no) },
} as const;

/** Each word of a signal with the value it stands for, as written, one after the other; a word may come twice. */
export function spellingsOf(signal: StateSignal): readonly (readonly [word: string, value: string])[] {
  const listed = (some: Words | undefined): readonly (readonly [string, string])[] =>
    Object.entries(some ?? {}).flatMap(([value, lines]) =>
      wordsOf(lines).map((word) => [word, value] as const),
    );
  if (signal === 'partner-ready' || signal === 'partner-present') {
    const own = signal === 'partner-ready' ? readyWords : presentWords;
    const not = negated(own).map((word) => [word, 'no'] as const);
    return [...listed(answers), ...listed(own), ...not, ...implied(signal)];
  }
  const said = Object.entries(phrases[signal] ?? {}).flatMap(([value, some]) =>
    some.map((phrase) => [phrase, value] as const),
  );
  return [...listed(words[signal]), ...said];
}

/** A partner that is ready is there, and one that is not there is not ready. */
function implied(signal: keyof typeof partnerWords): readonly (readonly [string, string])[] {
  return signal === 'partner-present'
    ? partnerWords['partner-ready'].yes.map((word) => [word, 'yes'] as const)
    : partnerWords['partner-present'].no.map((word) => [word, 'no'] as const);
}

/** A word as it is compared: without case and accents, blanks as one. */
export function foldedWord(word: string): string {
  return plainLetters(word.trim()).replace(/\s+/g, ' ');
}
