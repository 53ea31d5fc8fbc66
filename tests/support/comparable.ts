/** A value with its columns as texts: they are compared at once, and as strictly, where number by number takes a minute. */
export function comparable(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (isColumn(value)) return `${value.constructor.name}: ${value.join()}`;
  if (Array.isArray(value)) return value.map(comparable);
  if (Object.getPrototypeOf(value) !== Object.prototype) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, comparable(item)]));
}

type Column = Uint8Array | Uint32Array | Int32Array | Float64Array;

function isColumn(value: object): value is Column {
  return [Uint8Array, Uint32Array, Int32Array, Float64Array].some((kind) => value instanceof kind);
}
