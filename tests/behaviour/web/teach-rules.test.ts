import { describe, expect, test } from 'vitest';
import type { SeenWording } from '../../../src/vocabulary.ts';
import { previewsOf, usefulRules } from '../../../web/rule-previews.ts';
import {
  type Choice,
  isOpen,
  keyOf,
  lackOf,
  leftOver,
  noChoice,
  parameterGroups,
  rulesOf,
  signalOf,
} from '../../../web/teach-rules.ts';

function seen(kind: SeenWording['kind'], name: string, more: Partial<SeenWording> = {}): SeenWording {
  return {
    kind,
    name,
    value: null,
    pattern: kind === 'message' ? `^${name}$` : '',
    count: 1,
    first: { file: 'x.csv', line: 2, text: 'row' },
    unit: 'RO1-A',
    isOfRedundancy: false,
    understood: null,
    ...more,
  };
}

const choose = (...all: readonly (readonly [SeenWording, Partial<Choice>])[]): Map<string, Choice> =>
  new Map(all.map(([wording, choice]) => [keyOf(wording), { ...noChoice, ...choice }]));

describe('rules from drop-downs', () => {
  const twin = seen('parameter', 'Twin in step');
  const yes = seen('value', 'Twin in step', { value: 'J', count: 7 });
  const no = seen('value', 'Twin in step', { value: 'N', count: 9 });
  const wordings = [twin, yes, no];

  test('a parameter and its values are one rule, with a lesson for each value that was chosen', () => {
    const choices = choose(
      [twin, { signal: 'partner-ready' }],
      [yes, { value: 'yes' }],
      [no, { value: 'no' }],
    );
    expect(rulesOf(wordings, choices)).toEqual([
      {
        key: keyOf(twin),
        says: 'Twin in step: partner-ready',
        lessons: [
          { kind: 'value', name: 'Twin in step', text: 'N', signal: 'partner-ready', meaning: 'no' },
          { kind: 'value', name: 'Twin in step', text: 'J', signal: 'partner-ready', meaning: 'yes' },
        ],
      },
    ]);
  });

  test('a value is ignored by a rule of its own, a parameter whole', () => {
    expect(rulesOf(wordings, choose([no, { value: 'ignore' }])).map((r) => r.lessons)).toEqual([
      [{ kind: 'ignore', pattern: '^Twin in step = N$' }],
    ]);
    expect(rulesOf(wordings, choose([twin, { signal: 'ignore' }])).map((r) => r.lessons)).toEqual([
      [{ kind: 'ignore', pattern: '^parameter Twin in step$' }],
    ]);
  });

  test('a value of another signal than the one chosen last is left out', () => {
    const choices = choose([twin, { signal: 'light' }], [no, { value: 'no' }]);
    expect(rulesOf(wordings, choices).map((r) => r.lessons)).toEqual([
      [{ kind: 'parameter', name: 'Twin in step', signal: 'light', values: {} }],
    ]);
  });

  test('a parameter that is known in part keeps its signal, and only what was chosen is taught', () => {
    const known = seen('parameter', 'role', { understood: { by: 'words', signal: 'role', value: null } });
    const leads = seen('value', 'role', { value: 'leads' });
    const active = seen('value', 'role', {
      value: 'active',
      understood: { by: 'words', signal: 'role', value: 'active' },
    });
    const [group] = parameterGroups([known, leads, active]);
    expect(group !== undefined && isOpen(group)).toBe(true);
    expect(signalOf(known, new Map())).toBe('role');
    expect(rulesOf([known, leads, active], new Map())).toEqual([]);
    expect(
      rulesOf([known, leads, active], choose([leads, { value: 'active' }])).map((r) => r.lessons),
    ).toEqual([[{ kind: 'value', name: 'role', text: 'leads', signal: 'role', meaning: 'active' }]]);
  });

  test('a message lacks its value until it is chosen, and is no rule until then', () => {
    const broken = seen('message', 'mirror broken');
    const half = { ...noChoice, signal: 'partner-ready' };
    expect(lackOf(broken, half)).toBe('Choose the value of partner-ready.');
    expect(rulesOf([broken], choose([broken, half]))).toEqual([]);
    expect(lackOf(broken, { ...half, pattern: '^mirror (?<value>.*)$' })).toBeNull();
    expect(rulesOf([broken], choose([broken, { ...half, value: 'no', whose: 'pair' }]))[0]?.lessons).toEqual([
      { kind: 'message', when: '^mirror broken$', signal: 'partner-ready', value: 'no', whose: 'pair' },
    ]);
    expect(lackOf(broken, { ...noChoice, signal: 'removed' })).toBeNull();
  });

  test('two units of one pair that one pattern names are one rule', () => {
    const units = [seen('unit', 'weir-4-east'), seen('unit', 'weir-4-west')] as const;
    const both = choose([units[0], { signal: 'half' }], [units[1], { signal: 'half' }]);
    expect(rulesOf(units, both).map((r) => r.lessons)).toEqual([
      [{ kind: 'unit', pattern: '^(?<pair>weir-4)-(?<half>[\\pL\\d]+)$' }],
    ]);
    expect(rulesOf(units, choose([units[0], { signal: 'pair' }])).map((r) => r.lessons)).toEqual([
      [{ kind: 'unit', pattern: '^(?<pair>weir-4-east)$' }],
    ]);
  });

  test('what was not applied stays in hand', () => {
    const broken = seen('message', 'mirror broken');
    const choices = choose(
      [twin, { signal: 'partner-ready' }],
      [yes, { value: 'yes' }],
      [broken, { signal: 'partner-ready' }],
    );
    const applied = rulesOf([...wordings, broken], choices);
    expect(applied.map(({ key }) => key)).toEqual([keyOf(twin)]);
    expect([...leftOver(choices, applied).keys()]).toEqual([keyOf(broken)]);
  });

  test('a hostile name stands for itself in the pattern', () => {
    const name = '<script>alert(1)</script> =2+3 (.*)';
    const [rule] = rulesOf(
      [seen('parameter', name)],
      choose([seen('parameter', name), { signal: 'ignore' }]),
    );
    expect(rule?.lessons).toEqual([
      { kind: 'ignore', pattern: '^parameter <script>alert\\(1\\)</script> =2\\+3 \\(\\.\\*\\)$' },
    ]);
  });
});

describe('what rules would do', () => {
  const rule = (key: string, count = 1): Parameters<typeof previewsOf>[0][number] => ({
    key,
    says: key,
    lessons: Array.from({ length: count }, () => ({ kind: 'ignore', pattern: key }) as const),
  });
  const fits = { rows: 3, fits: 5, isBehind: false, lines: [], problem: null };

  test('is said of each, and one that matches nothing is not applied', () => {
    const rules = [rule('good'), rule('none'), rule('wrong'), rule('behind'), rule('file'), rule('new')];
    const previews = previewsOf(rules, [
      fits,
      { ...fits, rows: 0, fits: 0 },
      {
        ...fits,
        fits: null,
        problem: { what: 'messages[0].when is not a pattern: missing ).', fix: 'Close it.' },
      },
      { ...fits, rows: 0, isBehind: true },
      { ...fits, fits: null },
    ]);
    expect(previews.get('good')?.says).toBe('Matches 5 rows.');
    expect(previews.get('none')?.says).toBe('Not applied: this pattern matches no row. Change the pattern.');
    expect(previews.get('wrong')?.says).toBe('Not applied: this is not a pattern: missing ). Close it.');
    expect(previews.get('behind')?.says).toContain('an earlier rule of the phrasebook takes all rows');
    // What was not looked at yet is not applied either.
    expect(usefulRules(rules, new Map([...previews].slice(0, 5))).map((r) => r.key)).toEqual([
      'good',
      'file',
    ]);
  });
});
