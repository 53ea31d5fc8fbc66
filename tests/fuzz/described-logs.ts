/** A log that only a rule for files explains, and that rule. */
export interface Described {
  readonly kind: string;
  readonly name: string;
  readonly lines: readonly string[];
  readonly rule: string;
}

export const describedLogs: readonly Described[] = [
  {
    kind: 'records',
    name: 'RO1-A-boot.log',
    lines: [
      '[   12.345678] role',
      '    active',
      '[   13.000001] light',
      '    off',
      '[   14.5] partner in slot B',
      '',
      '    not ready',
    ],
    rule: '{ match: "*-boot.log", path: "(?<pair>[A-Z0-9]+)-(?<half>[AB])-", record: "^\\\\[", time: { since: "2026-03-14T08:00:00Z" } }',
  },
  {
    kind: 'named groups',
    name: 'named.log',
    lines: [
      'A@RO1 <light off> on 14/03/2026 at 10:00:00 6.4.1',
      'B@RO1 <light steady> on 14/03/2026 at 10:00:01 -',
    ],
    rule: '{ match: "*.log", line: "^(?<half>.)@(?<pair>\\\\S+) <(?<message>.*)> on (?<date>\\\\S+) at (?<clock>\\\\S+) (?:-|(?<firmware>.*))$" }',
  },
  {
    kind: 'named fields',
    name: 'fields.json',
    lines: [
      '{"AT":"1773478800123456","HOST":{"NAME":"RO1-A"},"MESSAGE":"light steady","TAG":"firmware","V":"6.4.1"}',
      '{"AT":"1773478801123456","HOST":{"NAME":"RO1-B"},"MESSAGE":"light off","TAG":"role","V":"standby"}',
    ],
    rule: '{ match: "*", time: { epoch: us }, columns: { time: AT, unit: HOST.NAME, message: MESSAGE, parameter: TAG, value: V } }',
  },
  {
    kind: 'wide table',
    name: 'wide.csv',
    lines: [
      'time,RO1-A.firmware,RO1-A.light,RO1-B.firmware,RO1-B.light,RO1-A.load,spare',
      ...['10', '20', '30'].map((s) => `2026-03-14 10:00:${s}Z,6.2.0,off,6.2.0,steady,41.5,0`),
      '2026-03-14 10:00:40Z,6.2.0,off,6.4.1,flashing,41.7,0',
    ],
    rule: '{ match: "*", header: "^(?<unit>[A-Z0-9]+-[AB])[.](?<parameter>\\\\w+)$" }',
  },
  {
    kind: 'numbered columns',
    name: 'numbered.csv',
    lines: ['light;off;RO1-A;14/03/2026;10:00:00', 'light;steady;RO1-A;14/03/2026;10:00:10'],
    rule: '{ match: "*", columns: { date: "#4", clock: "#5", unit: "#3", parameter: "#1", value: "#2" } }',
  },
];
