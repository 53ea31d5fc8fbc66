import * as v from 'valibot';

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

const columnKeys = {
  time: v.optional(text),
  date: v.optional(text),
  clock: v.optional(text),
  unit: v.optional(text),
  pair: v.optional(text),
  half: v.optional(text),
  role: v.optional(text),
  parameter: v.optional(text),
  value: v.optional(text),
  message: v.optional(text),
  severity: v.optional(text),
  class: v.optional(text),
};

/** The shape of a phrasebook file; a part whose rules are all commented out is empty. Source: design.md, section 3. */
export const phrasebookSchema = v.strictObject({
  name: v.optional(text),
  time: v.nullish(
    v.strictObject({
      zone: v.optional(text),
      order: v.optional(v.picklist(['day-first', 'month-first'])),
      year: v.optional(v.pipe(v.number(), v.integer())),
      format: v.optional(text),
    }),
  ),
  files: v.nullish(
    v.array(
      v.strictObject({
        match: text,
        layout: v.optional(v.picklist(['readings', 'snapshots', 'journal', 'lines', 'field-notes'])),
        columns: v.optional(v.strictObject(columnKeys)),
        line: v.optional(text),
      }),
    ),
  ),
  units: v.nullish(
    v.array(
      v.strictObject({
        pattern: text,
        pair: v.optional(textual),
        half: v.optional(textual),
        role: v.optional(v.picklist(['active', 'standby'])),
      }),
    ),
  ),
  parameters: v.nullish(
    v.record(
      text,
      v.strictObject({
        signal: text,
        subject: v.optional(subject),
        values: v.optional(valueMap),
        scale: v.optional(v.number()),
      }),
    ),
  ),
  messages: v.nullish(
    v.array(
      v.strictObject({
        when: text,
        signal: text,
        subject: v.optional(subject),
        value: v.optional(textual),
        values: v.optional(valueMap),
        half: v.optional(textual),
        role: v.optional(v.picklist(['active', 'standby'])),
      }),
    ),
  ),
  ignore: v.nullish(v.array(text)),
});

export type PhrasebookText = v.InferOutput<typeof phrasebookSchema>;
export type ColumnKey = keyof typeof columnKeys;
