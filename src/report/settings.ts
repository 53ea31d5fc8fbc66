import type { Finding, Setting } from '../vocabulary.ts';

/** Where each thing that advice asks for can be said besides in a phrasebook: to the command, and in the page. */
const places: Readonly<Record<Setting, { readonly command: string | null; readonly page: string }>> = {
  order: {
    command: 'Or pass --order day-first or --order month-first.',
    page: 'Or choose the order of day and month under "Time zone and date format" in Sources.',
  },
  year: {
    command: 'Or pass --year.',
    page: 'Or give the year under "Time zone and date format" in Sources.',
  },
  zone: {
    command: 'Or pass --zone, such as --zone Europe/Lisbon.',
    page: 'Or choose it under "Time zone and date format" in Sources.',
  },
  clocks: {
    command: 'To correct it, pass --align-clocks.',
    page: 'To correct it, tick the box under "Clocks" in Sources.',
  },
  layout: {
    command: 'Or have one drafted with steadypair inspect --draft-phrasebook.',
    page: 'Or say under "Left out" in Sources how it is read.',
  },
  // The advice itself is the rule to be written.
  wording: { command: null, page: 'Or choose its meaning under "Units, values and messages" in Sources.' },
  reading: { command: 'Run steadypair inspect.', page: 'Open Sources.' },
};

/** Advice as the command gives it, with the option that does the same. */
export function inCommand(advice: string, setting: Setting | undefined): string {
  const command = setting === undefined ? null : places[setting].command;
  return command === null ? advice : `${advice} ${command}`;
}

/** Advice as the page gives it, with the control that does the same; it names no option of the command. */
export function inPage(advice: string, setting: Setting | undefined): string {
  return setting === undefined ? advice : `${advice} ${places[setting].page}`;
}

/** What a finding says, as the command prints it. */
export function statementInCommand({ statement, setting }: Finding): string {
  return inCommand(statement, setting);
}

/** What a finding says, as the page shows it. */
export function statementInPage({ statement, setting }: Finding): string {
  return inPage(statement, setting);
}
