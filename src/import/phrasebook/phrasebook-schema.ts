import * as v from 'valibot';
import { epochUnits } from '../clock/stamp-counts.ts';
import { columnKeys } from './column-keys.ts';

const text = v.string();
/** YAML 1.2 reads 1 and 6.4 as numbers; a phrasebook means the text. */
const textual = v.pipe(
  v.union([v.string(), v.number(), v.boolean()]),
  v.transform((value) => String(value)),
  // A draft leaves blanks to fill in: none of them is a pair, a half or a value.
  v.check((value) => value !== '___', 'a word in place of the blank'),
);
const valueMap = v.record(text, textual);
const subject = v.picklist(['pair', 'half', 'active', 'standby']);
const role = v.optional(v.picklist(['active', 'standby']));

const time = v.strictObject({
  zone: v.optional(text),
  order: v.optional(v.picklist(['day-first', 'month-first'])),
  year: v.optional(v.pipe(v.number(), v.integer())),
  format: v.optional(text),
});

/** Of one file, whose stamps may be counts besides. */
const fileTime = v.strictObject({
  ...time.entries,
  since: v.optional(text),
  epoch: v.optional(v.picklist(epochUnits)),
});

const columns = v.strictObject(Object.fromEntries(columnKeys.map((key) => [key, v.optional(text)])));

const unitRule = v.strictObject({
  pattern: text,
  pair: v.optional(textual),
  half: v.optional(textual),
  role,
});

const parameterRule = v.strictObject({
  signal: text,
  subject: v.optional(subject),
  values: v.optional(valueMap),
  scale: v.optional(v.number()),
});

/** What a message says, besides its signal. */
const said = {
  subject: v.optional(subject),
  of: v.optional(v.picklist(['other', 'pair', 'self'])),
  value: v.optional(textual),
  values: v.optional(valueMap),
  off: v.optional(textual),
  half: v.optional(textual),
  role,
};

const messageRule = v.strictObject({
  when: text,
  only: v.optional(v.strictObject({ file: v.optional(text), unit: v.optional(text) })),
  signal: v.optional(text),
  means: v.optional(v.array(v.strictObject({ signal: text, ...said }))),
  ...said,
});

/**
 * The shape of a phrasebook file that may name those layouts; a part whose rules are all commented out is empty. Source:
 * design.md, section 3.
 */
export function phrasebookSchema(layouts: readonly string[]) {
  const fileRule = v.strictObject({
    match: text,
    layout: v.optional(v.picklist(layouts)),
    columns: v.optional(columns),
    line: v.optional(text),
    states: v.optional(v.record(text, v.picklist(['on', 'off']))),
    good: v.optional(v.array(textual)),
    unit: v.optional(textual),
    path: v.optional(text),
    record: v.optional(text),
    header: v.optional(text),
    time: v.optional(fileTime),
  });
  return v.strictObject({
    name: v.optional(text),
    time: v.nullish(time),
    files: v.nullish(v.array(fileRule)),
    units: v.nullish(v.array(unitRule)),
    parameters: v.nullish(v.record(text, parameterRule)),
    messages: v.nullish(v.array(messageRule)),
    ignore: v.nullish(v.array(text)),
    ignoreUnits: v.nullish(v.array(text)),
  });
}

export type PhrasebookText = v.InferOutput<ReturnType<typeof phrasebookSchema>>;
