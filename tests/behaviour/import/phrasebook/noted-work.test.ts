import { expect, test } from 'vitest';
import { entryReader } from '../../../../src/import/phrasebook/entries.ts';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';

/** What a technician's line means. */
function noted(text: string, yaml: string | null = null): string {
  return entryReader(readPhrasebook('phrasebook.yaml', yaml))
    .readNote({ pair: 'RO1', half: null, role: null }, text)
    .map(({ subject, signal }) => `${subject.half ?? subject.role ?? ''} ${signal}`.trim())
    .join(', ');
}

test.each([
  ['pulled standby from slot B', 'B removed'],
  ['pulled the module out of B', 'B removed'],
  ['pulled old module B, fitted new one', 'B removed'],
  ['Jo pulled B', 'B removed'],
  ['took out the standby', 'standby removed'],
  ['pulled B and put in new one', 'B removed'],
  ['new module fitted in slot B, serial H4-2001', 'B inserted'],
  ['inserted replacement module H4-2001 in B', 'B inserted'],
  ['module in slot B inserted', 'B inserted'],
  ['seated B again', 'B inserted'],
  ['reflashed B to 6.4.1', 'B reflash-end'],
])('"%s" tells of %s', (text, expected) => {
  expect(noted(text)).toBe(expected);
});

test.each([
  'took out the fuse of the fan',
  'pulled the cable from port 2',
  'pulled link A of B',
  'removed the cover',
  'cover removed',
  'inserted SD card',
  'SD card inserted',
  'put in a ticket',
  'put in new battery',
])('"%s" is a note: it was no module', (text) => {
  expect(noted(text)).toBe('note');
});

test.each([
  'pulled A? no, B',
  'pulled A, sorry B',
  'wrong: pulled A',
  'pulled B and A',
  'pulled B 10 min ago',
  'pulled B at 09:10',
  'removed B from service',
  'light steady?',
])('"%s" is a note: which, whether or when is not said', (text) => {
  expect(noted(text)).toBe('note');
});

test("a site's own rule is taken at its word", () => {
  expect(noted('removed the cover', 'messages: [{ when: "removed the cover", signal: removed }]\n')).toBe(
    'removed',
  );
});
