import { type Command, InvalidArgumentError, Option } from 'commander';

interface Said {
  /** What the option does, for `--help`. */
  readonly says: string;
}

interface Flag extends Said {
  readonly kind: 'flag';
}

interface TextOption extends Said {
  readonly kind: 'text';
  /** What it takes, as `--help` names it. */
  readonly takes: string;
}

interface NumberOption extends Said {
  readonly kind: 'whole number';
  readonly takes: string;
}

interface ChoiceOption<V> extends Said {
  readonly kind: 'choice';
  readonly takes: string;
  readonly choices: readonly V[];
}

type OptionFor<V> = [V] extends [boolean]
  ? Flag
  : [V] extends [number]
    ? NumberOption
    : string extends V
      ? TextOption
      : ChoiceOption<V & string>;

/**
 * An option for every property of a command's options, and no other: one that is left out or misspelt does not compile. The
 * flag is the property's name, `readyDays` is `--ready-days`.
 */
export type OptionsFor<T> = { readonly [K in keyof T]-?: OptionFor<NonNullable<T[K]>> };

/** Any options, by name. */
type AnyOptions = Readonly<Record<string, AnyOption>>;

type AnyOption = Flag | TextOption | NumberOption | ChoiceOption<string>;

/** Adds the options to a command, in their order. */
export function addOptions(command: Command, options: AnyOptions): Command {
  for (const [name, option] of Object.entries(options)) command.addOption(toOption(name, option));
  return command;
}

function toOption(name: string, option: AnyOption): Option {
  const flag = `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  if (option.kind === 'flag') return new Option(flag, option.says);
  const taking = new Option(`${flag} <${option.takes}>`, option.says);
  switch (option.kind) {
    case 'text':
      return taking.argParser(someText);
    case 'whole number':
      return taking.argParser(wholeNumber);
    case 'choice':
      return taking.choices(option.choices);
  }
}

/** A variable of a shell that was never set comes as nothing. */
function someText(text: string): string {
  if (text === '') throw new InvalidArgumentError('It must not be empty.');
  return text;
}

function wholeNumber(text: string): number {
  if (!/^\d{1,6}$/.test(text)) throw new InvalidArgumentError('It must be a whole number.');
  return Number(text);
}
