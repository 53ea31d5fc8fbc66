import type { FailureKind } from '../../vocabulary.ts';

/** Input that cannot be used at all, or an option that cannot be followed: where, what, and what to do. */
export class InputError extends Error {
  readonly where: string;
  readonly what: string;
  readonly fix: string;
  readonly kind: FailureKind;

  constructor(where: string, what: string, fix: string, kind: FailureKind = 'unreadable') {
    super(`${where}: ${what} ${fix}`);
    this.name = 'InputError';
    this.where = where;
    this.what = what;
    this.fix = fix;
    this.kind = kind;
  }
}
