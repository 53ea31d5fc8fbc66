import { lines } from '../../../../src/import/layouts/lines.ts';
import { checkImporter } from '../../../support/check-importer.ts';

const line = (pattern: string, more = ''): string =>
  `${more}files: [{ match: "*", line: ${JSON.stringify(pattern)} }]\n`;

/** Every named group of a line pattern counts. */
checkImporter(lines, [
  {
    name: 'date and clock apart, and the pair beside its half',
    file: 'a.log',
    text: 'INTAKE-2|A|14.03.2026|10:00:00.000|light steady\n',
    phrasebook: line('^(?<pair>[^|]+)[|](?<half>[^|]+)[|](?<date>[^|]+)[|](?<clock>[^|]+)[|](?<message>.*)$'),
    changes: ['10:00:00.000 INTAKE-2 A light steady line 1'],
  },
  {
    name: 'a pair alone is read as units are',
    file: 'a.log',
    text: '2026-03-14T10:00:00.0Z RO1-B light steady\n',
    phrasebook: line('^(?<time>\\S+) (?<pair>\\S+) (?<message>.*)$'),
    changes: ['10:00:00.000 RO1 B light steady line 1'],
  },
  {
    name: 'the order of dates is settled where they stand in the midst of a line',
    file: 'a.log',
    text: 'RO1-A 03/04/2026 10:00:00.000 light steady\nRO1-A 13/04/2026 10:00:00.000 light off\n',
    phrasebook: line('^(?<unit>\\S+) (?<date>\\S+) (?<time>\\S+) (?<message>.*)$'),
    changes: ['10:00:00.000 RO1 A light steady line 1', '10:00:00.000 RO1 A light off line 2'],
  },
  {
    name: 'a parameter and its value',
    file: 'a.log',
    text: '2026-03-14T10:00:00.0Z RO1-A firmware := 6.4.1\n2026-03-14T10:00:01.0Z RO1-A role := active\n',
    phrasebook: line('^(?<time>\\S+) (?<unit>\\S+) (?<parameter>\\S+) := (?<value>.*)$'),
    changes: ['10:00:00.000 RO1 A firmware 6.4.1 line 1', '10:00:01.000 RO1 A role active line 2'],
  },
  {
    name: 'any other group is a parameter, where it takes part',
    file: 'a.log',
    text: '2026-03-14T10:00:00.0Z RO1-A [active] 6.4.1\n2026-03-14T10:00:01.0Z RO1-A [standby]\n',
    phrasebook: line('^(?<time>\\S+) (?<unit>\\S+) \\[(?<role>\\w+)\\](?: (?<firmware>\\S+))?$'),
    changes: [
      '10:00:00.000 RO1 A role active line 1',
      '10:00:00.000 RO1 A firmware 6.4.1 line 1',
      '10:00:00.000..10:00:01.000 RO1 A role standby line 2',
    ],
  },
  {
    name: 'severity and class say nothing of the pair',
    file: 'a.log',
    text: '2026-03-14T10:00:00.0Z WARN core RO1-A light off\n',
    phrasebook: line('^(?<time>\\S+) (?<severity>\\S+) (?<class>\\S+) (?<unit>\\S+) (?<message>.*)$'),
    changes: ['10:00:00.000 RO1 A light off line 1'],
    rows: { used: 1, unmatched: 0 },
  },
]);

const columns = (text: string): string => `files: [{ match: "*", columns: { ${text} } }]\n`;

/** Columns of JSON lines and key=value. */
checkImporter(lines, [
  {
    name: 'JSON with names of its own, counted in microseconds',
    file: 'journal.json',
    text: '{"__REALTIME_TIMESTAMP":"1773478800123456","_HOSTNAME":"RO1-A","MESSAGE":"light steady","PRIORITY":"6"}\n',
    phrasebook:
      'files: [{ match: "*", time: { epoch: us }, columns: { time: __REALTIME_TIMESTAMP, unit: _HOSTNAME, message: MESSAGE, severity: PRIORITY } }]\n',
    changes: ['09:00:00.123 RO1 A light steady line 1'],
    rows: { used: 1, unmatched: 0 },
  },
  {
    name: 'JSON objects within objects, by dotted paths; others are parameters of that name',
    file: 'events.json',
    text: '{"at":{"utc":"2026-03-14T10:00:00.0Z"},"host":{"name":"RO1-A"},"log":{"text":"light steady"},"fw":{"main":"6.4.1"},"list":[1]}\n',
    phrasebook: `${columns('time: at.utc, unit: host.name, message: log.text')}parameters: { fw.main: { signal: firmware } }\n`,
    changes: ['10:00:00.000 RO1 A light steady line 1', '10:00:00.000 RO1 A firmware 6.4.1 line 1'],
  },
  {
    name: 'JSON with pair and half apart, and a role of that half',
    file: 'events.json',
    text: '{"ts":"2026-03-14T10:00:00.0Z","set":"INTAKE-2","slot":"B","mode":"standby"}\n',
    phrasebook: columns('pair: set, half: slot, role: mode'),
    changes: ['10:00:00.000 INTAKE-2 B role standby line 1'],
  },
  {
    name: 'JSON with a parameter in one field and its value in another',
    file: 'events.json',
    text: '{"ts":"2026-03-14T10:00:00.0Z","unit":"RO1-A","tag":"firmware","v":"6.4.1"}\n',
    phrasebook: columns('parameter: tag, value: v'),
    changes: ['10:00:00.000 RO1 A firmware 6.4.1 line 1'],
    rows: { used: 1, unmatched: 0 },
  },
  {
    name: 'key=value with a date and a clock, and a message of another name',
    file: 'a.kv',
    text: 'd=14/03/2026 c=10:00:00.000 where=RO1-A what="light steady"\n',
    phrasebook: columns('date: d, clock: c, unit: where, message: what'),
    changes: ['10:00:00.000 RO1 A light steady line 1'],
  },
  {
    name: 'JSON with a date and a clock by their plain names',
    file: 'events.json',
    text: '{"date":"2026-03-14","time":"10:00:00.000","unit":"RO1-A","message":"light steady"}\n',
    changes: ['10:00:00.000 RO1 A light steady line 1'],
  },
  {
    name: 'the order of dates in JSON is settled by all of them',
    file: 'events.json',
    text: '{"unit":"RO1-A","time":"03/04/2026 10:00:00.0","light":"off"}\n{"unit":"RO1-A","time":"13/04/2026 10:00:00.0","light":"steady"}\n',
    changes: ['10:00:00.000 RO1 A light off line 1', '10:00:00.000..10:00:00.000 RO1 A light steady line 2'],
  },
]);
