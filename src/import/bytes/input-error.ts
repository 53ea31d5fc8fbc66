/** Input that can not be used at all, or an option that can not be followed: where, what, and what to do. */
export class InputError extends Error {
  readonly where: string;
  readonly what: string;
  readonly fix: string;

  constructor(where: string, what: string, fix: string) {
    super(`${where}: ${what} ${fix}`);
    this.name = 'InputError';
    this.where = where;
    this.what = what;
    this.fix = fix;
  }
}
