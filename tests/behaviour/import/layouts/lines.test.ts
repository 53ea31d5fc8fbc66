import { lines } from '../../../../src/import/layouts/lines.ts';
import { checkImporter } from '../../../support/check-importer.ts';

checkImporter(lines, [
  {
    name: 'a leading timestamp, a unit in brackets or as a word, and a message',
    file: 'events.log',
    text: '2026-03-14 10:00:00.500Z [RO1-B] light flashing\n2026-03-14 10:00:01.500Z RO1: partner ready\nno stamp here\n',
    changes: ['10:00:00.500 RO1 B light flashing line 1', '10:00:01.500 RO1 pair partner-ready yes line 2'],
    rows: { read: 3, used: 2, ignored: 0, rejected: 1 },
  },
  {
    name: 'RFC 5424: the host is the unit',
    file: 'syslog.log',
    text: '<165>1 2026-03-14T10:00:00.003Z RO1-A app - ID47 [x@32473 a="b]c"] role active\n',
    changes: ['10:00:00.003 RO1 A role active line 1'],
  },
  {
    name: 'RFC 3164: the year comes from outside',
    file: 'syslog.log',
    text: '<34>Mar 14 10:00:00 RO1-A supply fault\n',
    year: 2026,
    changes: ['10:00:00.000 RO1 A supply fault line 1'],
  },
  {
    name: 'key=value: known keys are columns, all others parameters',
    file: 'kv.log',
    text: 'time=2026-03-14T10:00:00.0Z unit=RO1-B light=steady firmware="6.4.1"\n',
    changes: ['10:00:00.000 RO1 B light steady line 1', '10:00:00.000 RO1 B firmware 6.4.1 line 1'],
  },
  {
    name: 'JSON lines',
    file: 'events.jsonl',
    text: '{"time":"2026-03-14T10:00:00.0Z","unit":"RO1","partner-ready":"no"}\n',
    changes: ['10:00:00.000 RO1 pair partner-ready no line 1'],
  },
  {
    name: 'JSON lines: a number is what is written, not the one that a computer would write for it',
    file: 'events.jsonl',
    text: [
      '{"time":1773482400.0,"unit":"RO1-B","firmware":6.10,"serial":12345678901234567890}',
      '{"time":1773482401.50,"unit":"RO1-B","firmware":6.1,"serial":12345678901234567891,"note":"6.10 \\"7.0"}',
      '',
    ].join('\n'),
    changes: [
      '10:00:00.000 RO1 B firmware 6.10 line 1',
      '10:00:00.000 RO1 B serial 12345678901234567890 line 1',
      '10:00:00.000..10:00:01.500 RO1 B firmware 6.1 line 2',
      '10:00:00.000..10:00:01.500 RO1 B serial 12345678901234567891 line 2',
    ],
  },
  {
    name: "the phrasebook's own line pattern",
    file: 'own.log',
    text: '#10:00:00 14.03.2026# RO1 B# partner ready\n'
      .replace('#10:00:00 14.03.2026#', '14.03.2026 10:00:00 |')
      .replace('RO1 B#', 'RO1-B|'),
    phrasebook:
      'time: { order: day-first }\nfiles: [{ match: "own.log", line: "^(?<time>[^|]+)[|] (?<unit>[^|]+)[|] (?<message>.*)$" }]\n',
    changes: ['10:00:00.000 RO1 pair partner-ready yes line 1'],
  },
  {
    name: 'a unit that begins with Z is no zone',
    file: 'events.log',
    text: '2026-03-14 10:00:00 ZEBRA1-A light steady\n2026-03-14 10:00:01 Z RO1-A light off\n',
    changes: ['10:00:00.000 ZEBRA1 A light steady line 1', '10:00:01.000 RO1 A light off line 2'],
  },
]);
