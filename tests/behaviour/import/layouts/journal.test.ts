import { journal } from '../../../../src/import/layouts/journal.ts';
import { checkImporter } from '../../../support/check-importer.ts';

checkImporter(journal, [
  {
    name: 'reads plain English; identical lines in a row are one entry',
    file: 'journal.csv',
    text: 'time,unit,message\n2026-03-14T10:00:00.250Z,RO1-B,light steady\n2026-03-14T10:00:01Z,RO1,partner not ready\n2026-03-14T10:00:01Z,RO1,partner not ready\n2026-03-14T10:00:02Z,RO1,hello\n',
    changes: ['10:00:00.250 RO1 B light steady line 2', '10:00:01.000 RO1 pair partner-ready no line 3'],
    rows: { read: 4, used: 2, unchanged: 1, unmatched: 1 },
  },
  {
    name: 'follows the phrasebook: groups, fixed values, value maps, ignored wording; case does not matter',
    file: 'journal.csv',
    text: 'time;unit;message\n2026-03-14T10:00:00.1Z;RO1;Module in A now running release 6.4.1\n2026-03-14T10:00:02.1Z;RO1;SYNC ok\n2026-03-14T10:00:03.1Z;RO1;user X logged on\n',
    phrasebook:
      'messages:\n  - { when: "module in (?<half>[AB]) now running release (?<value>\\\\S+)", signal: firmware }\n  - { when: "sync (?<value>OK|FAIL)", signal: partner-ready, values: { OK: "yes", FAIL: "no" } }\nignore: ["^user .* logged (on|off)"]\n',
    changes: ['10:00:00.100 RO1 A firmware 6.4.1 line 2', '10:00:02.100 RO1 pair partner-ready yes line 3'],
    rows: { used: 2, ignored: 1 },
  },
  {
    name: 'counts lines by the editor where a quoted cell holds a line end',
    file: 'journal.csv',
    text: 'time,unit,message\n2026-03-14T10:00:00.1Z,RO1,"a comment\nover two lines"\n2026-03-14T10:00:01.1Z,RO1,partner ready\n',
    changes: ['10:00:01.100 RO1 pair partner-ready yes line 4'],
    rows: { used: 1, unmatched: 1 },
  },
  {
    name: 'takes a line for the same again within its second, whatever other units say between, unless its own unit does',
    file: 'journal.csv',
    text: 'time,unit,message\n2026-03-14T10:00:00.1Z,RO1,sync failed\n2026-03-14T10:00:00.2Z,RO2,sync failed\n2026-03-14T10:00:01.1Z,RO1,sync failed\n2026-03-14T10:00:01.2Z,RO1,sync failed\n2026-03-14T10:00:01.3Z,RO1,sync started\n2026-03-14T10:00:01.4Z,RO1,sync failed\n',
    // 10:00:01.1 is 1.0 s after the first and the same; 10:00:01.2 is 1.1 s after it and another.
    changes: [
      '10:00:00.100 RO1 pair sync-failed - line 2',
      '10:00:00.200 RO2 pair sync-failed - line 3',
      '10:00:01.200 RO1 pair sync-failed - line 5',
      '10:00:01.300 RO1 pair sync-start - line 6',
      '10:00:01.400 RO1 pair sync-failed - line 7',
    ],
    rows: { read: 6, used: 5, unchanged: 1 },
  },
  {
    name: 'a quote that is never closed costs no other row',
    file: 'journal.csv',
    text: 'time,unit,message\n2026-03-14T10:00:00Z,RO1,"oops\n2026-03-14T10:00:02Z,RO1,partner not ready\n2026-03-14T10:00:03Z,RO1,"partner" ready\n2026-03-14T10:00:04Z,RO1,partner ready\n',
    changes: [
      '10:00:02.000 RO1 pair partner-ready no line 3',
      '10:00:04.000 RO1 pair partner-ready yes line 5',
    ],
    rows: { read: 4, used: 2, unmatched: 2 },
  },
]);
