/** A wrong phrasebook is one line: file, place inside it, what was expected, and the nearest right word where one is near. */
import { describe, expect, test } from 'vitest';
import { readPhrasebook } from '../../../../src/import/read-phrasebook.ts';

function refusal(yaml: string): string {
  try {
    readPhrasebook('p.yaml', yaml);
    return 'none';
  } catch (error) {
    return error instanceof Error ? error.message : 'no error';
  }
}

const message = (rest: string): string => `messages: [{ when: x, ${rest} }]\n`;

describe('a key that is none', () => {
  test.each([
    ['mesages: []\n', 'p.yaml: mesages is not a key here. Did you mean messages? '],
    ['ignoreUnit: [a]\n', 'p.yaml: ignoreUnit is not a key here. Did you mean ignoreUnits? '],
    [message('signl: role'), 'p.yaml: messages[0].signl is not a key here. Did you mean signal? '],
    [message('signal: fault, onyl: {}'), 'p.yaml: messages[0].onyl is not a key here. Did you mean only? '],
    [
      message('signal: fault, only: { fil: a }'),
      'p.yaml: messages[0].only.fil is not a key here. Did you mean file? Choose one of file, unit.',
    ],
    [
      message('means: [{ signal: role, vlaue: active }]'),
      'p.yaml: messages[0].means[0].vlaue is not a key here. Did you mean value? ',
    ],
    ['files: [{ match: a, stats: {} }]\n', 'p.yaml: files[0].stats is not a key here. Did you mean states? '],
    [
      'files: [{ match: a, columns: { qualty: Q } }]\n',
      'p.yaml: files[0].columns.qualty is not a key here. Did you mean quality? ',
    ],
    [
      'parameters: { X: { singal: role } }\n',
      'p.yaml: parameters.X.singal is not a key here. Did you mean signal? ',
    ],
  ])('%j', (yaml, expected) => {
    expect(refusal(yaml).slice(0, expected.length)).toBe(expected);
    expect(refusal(yaml)).not.toContain('\n');
  });

  test('that is near none names those there are, and no other', () => {
    expect(refusal('compose: 1\n')).toMatch(
      /^p\.yaml: compose is not a key here\. Choose one of name, time, files, /,
    );
  });
});

describe('a value that is none', () => {
  test.each([
    [
      message('signal: role, value: active, of: othr'),
      'p.yaml: messages[0].of is "othr", which has no meaning here. Did you mean other? Choose one of other, pair, self.',
    ],
    [
      message('signal: rloe'),
      'p.yaml: messages[0].signal is "rloe", which is not a signal. Did you mean role? ',
    ],
    [
      message('means: [{ signal: link-a, value: dwon }]'),
      'p.yaml: messages[0].means[0].value has "dwon", which is not a value of link-a. Did you mean down? Choose one of up, down.',
    ],
    [
      message('signal: role, value: active, off: away'),
      'p.yaml: messages[0].off has "away", which is not a value of role. Choose one of active, standby, none.',
    ],
    [
      message('signal: removed, off: back'),
      'p.yaml: messages[0].off is "back", but removed is not a state. Write off: ignore to ',
    ],
    [
      'files: [{ match: a, states: { ACTIVE: set } }]\n',
      'p.yaml: files[0].states.ACTIVE is "set", which has no meaning here. Choose one of on, off.',
    ],
    [
      'files: [{ match: a, good: Good }]\n',
      'p.yaml: files[0].good is "Good", expected a list, such as [a, b].',
    ],
    ['ignoreUnits: ^HMI\n', 'p.yaml: ignoreUnits is "^HMI", expected a list, such as [a, b].'],
    ['ignoreUnits: ["("]\n', 'p.yaml: ignoreUnits[0] is not a valid pattern: '],
    [message('signal: fault, only: { unit: "[" }'), 'p.yaml: messages[0].only.unit is not a valid pattern: '],
    ['parameters: { /(/: { signal: role } }\n', 'p.yaml: parameters./(/ is not a valid pattern: '],
    [
      'parameters: { "/^(?<value>x)/": { signal: role } }\n',
      'p.yaml: parameters./^(?<value>x)/ has a group (?<value>...), and role has not just two values. ',
    ],
  ])('%j', (yaml, expected) => {
    expect(refusal(yaml).slice(0, expected.length)).toBe(expected);
    expect(refusal(yaml)).not.toContain('\n');
  });
});

describe('a rule for messages', () => {
  test.each([
    ['when: x', 'messages[0] has neither signal nor means. Give signal for one thing, or means for several.'],
    [
      'when: x, signal: fault, means: [{ signal: fault }]',
      'messages[0] has both signal and means. Give signal for one thing, or means for several.',
    ],
    ['when: x, means: []', 'messages[0].means is empty. Give it at least one item with a signal.'],
    [
      'when: x, value: a, means: [{ signal: fault }]',
      'messages[0].value stands beside means. Put value into each item of means.',
    ],
    ['when: x, means: [{ signal: role }]', 'messages[0].means[0] says no value for role. '],
    [
      'when: x, of: self, subject: half, signal: fault',
      'messages[0] has both of and subject. Keep one of them.',
    ],
    ['signal: fault', 'messages[0].when is missing. Add the key when.'],
  ])('{ %s } is refused', (rule, expected) => {
    expect(refusal(`messages: [{ ${rule} }]\n`)).toContain(`p.yaml: ${expected}`);
  });
});

test('an escape that YAML does not know says how a pattern is quoted', () => {
  expect(refusal('units:\n  - { pattern: "^(?<pair>RO\\d)$" }\n')).toBe(
    'p.yaml:2: Invalid escape sequence \\d. Write the pattern in single quotes, where a backslash stands for itself (\'\\d\'), or double each backslash ("\\\\d").',
  );
  expect(refusal("units:\n  - { pattern: '^(?<pair>RO\\d)$' }\n")).toBe('none');
});
