import type { Finding, Setting } from '../vocabulary.ts';

/** Where each thing that advice asks for can be said: to the command besides in the phrasebook, and in the page. */
const places: Readonly<Record<Setting, { readonly command: string | null; readonly page: string }>> = {
  order: {
    command: 'Or pass --order day-first or --order month-first.',
    page: 'Choose the order of day and month under "Time zone and date format" in Sources.',
  },
  year: {
    command: 'Or pass --year.',
    page: 'Give the year under "Time zone and date format" in Sources.',
  },
  zone: {
    command: 'Or pass --zone, such as --zone Europe/Lisbon.',
    page: 'Choose the zone under "Time zone and date format" in Sources.',
  },
  clocks: {
    command: 'To correct it, pass --align-clocks.',
    page: 'To correct it, tick the box under "Clocks" in Sources.',
  },
  layout: {
    command: 'Or have one drafted with steadypair inspect --draft-phrasebook.',
    page: 'Say under "Left out" in Sources how it is read.',
  },
  // The advice itself is the rule to be written.
  wording: { command: null, page: 'Choose the meaning under "Units, values and messages" in Sources.' },
  reading: { command: 'Run steadypair inspect.', page: 'Open Sources.' },
};

/** Advice as the command gives it, with the option that does the same. */
export function inCommand(advice: string, setting: Setting | undefined): string {
  const command = setting === undefined ? null : places[setting].command;
  return command === null ? advice : `${advice} ${command}`;
}

/** Advice as the page gives it: where the page has a control for it, that alone. It names no option of the command. */
export function inPage(advice: string, setting: Setting | undefined): string {
  return setting === undefined ? advice : places[setting].page;
}

/** What a finding says, as the command prints it. */
export function statementInCommand({ statement, setting }: Finding): string {
  return inCommand(statement, setting);
}

/** What a finding says, as the page shows it: with the advice of the page in place of the advice that it ends with. */
export function statementInPage({ statement, setting, advice = '' }: Finding): string {
  if (setting === undefined) return statement;
  const said = statement.endsWith(advice) ? statement.slice(0, statement.length - advice.length) : statement;
  return `${said.trimEnd()} ${inPage(advice, setting)}`;
}
