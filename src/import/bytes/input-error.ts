import type { FailureKind, Setting } from '../../vocabulary.ts';

/** Input that cannot be used at all, or an option that cannot be followed: where, what, and what to do, and by what besides. */
export class InputError extends Error {
  readonly where: string;
  readonly what: string;
  readonly fix: string;
  readonly kind: FailureKind;
  readonly setting: Setting | undefined;

  constructor(
    where: string,
    what: string,
    fix: string,
    kind: FailureKind = 'unreadable',
    setting: Setting | undefined = undefined,
  ) {
    super(`${where}: ${what} ${fix}`);
    this.name = 'InputError';
    this.where = where;
    this.what = what;
    this.fix = fix;
    this.kind = kind;
    this.setting = setting;
  }
}
