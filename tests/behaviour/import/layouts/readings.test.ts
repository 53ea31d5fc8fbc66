import { readings } from '../../../../src/import/layouts/readings.ts';
import { checkImporter } from '../../../support/check-importer.ts';

checkImporter(readings, [
  {
    name: 'keeps first readings and changes, with the last reading of the old value as the earliest',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1,partner-ready,yes\n2026-03-14 10:00:10Z,RO1,partner-ready,yes\n2026-03-14 10:00:20Z,RO1,partner-ready,no\n',
    changes: [
      '10:00:00.000 RO1 pair partner-ready yes line 2',
      '10:00:10.000..10:00:20.000 RO1 pair partner-ready no line 4',
    ],
    rows: { read: 3, used: 2, unchanged: 1 },
  },
  {
    name: 'reads a blank serial as the end of it, and any other blank as no reading',
    file: 'poll.csv',
    text: 'time;unit;parameter;value\n2026-03-14 10:00:00Z;RO1-B;serial;T2-1\n2026-03-14 10:00:10Z;RO1-B;serial;\n2026-03-14 10:00:10Z;RO1-B;light;\n',
    changes: ['10:00:00.000 RO1 B serial T2-1 line 2', '10:00:00.000..10:00:10.000 RO1 B serial - line 3'],
    rows: { used: 2, unchanged: 1 },
  },
  {
    name: 'counts unknown parameters, values and units as unmatched, impossible dates as rejected',
    file: 'poll.csv',
    text: 'time\tunit\tparameter\tvalue\n2026-03-14 10:00:00Z\tRO1\tcolour\tred\n2026-03-14 10:00:00Z\tRO1-A\tlight\tpurple\n2026-03-14 10:00:00Z\t??\tlight\toff\n2026-02-30 10:00:00Z\tRO1-A\tlight\toff\n2026-03-14 10:00:00Z\tRO1-A\tlight\toff\n',
    changes: ['10:00:00.000 RO1 A light off line 6'],
    rows: { read: 5, used: 1, unmatched: 3, rejected: 1 },
  },
  {
    name: 'follows a phrasebook for columns, values and subject; half-way lines of preamble are skipped',
    file: 'x-poll.csv',
    text: 'Export of the night shift\n\nStamp,Node,Item,Reading\n14/03/2026 10:00:00,RO1,Standby rel,6.2\n',
    phrasebook:
      'time: { zone: UTC, order: day-first }\nfiles: [{ match: "*-poll.csv", layout: readings, columns: { time: Stamp, unit: Node, parameter: Item, value: Reading } }]\nparameters: { Standby rel: { signal: firmware, subject: standby } }\n',
    changes: ['10:00:00.000 RO1 standby firmware 6.2 line 4'],
    rows: { read: 1, used: 1 },
  },
  {
    name: 'takes two wordings of one value for no change, and gauges as used',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1,partner-ready,1\n2026-03-14 10:00:10Z,RO1,partner-ready,yes\n2026-03-14 10:00:10Z,RO1-A,load,"41,5"\n',
    changes: ['10:00:00.000 RO1 pair partner-ready yes line 2'],
    rows: { used: 2, unchanged: 1 },
  },
  {
    name: 'takes no text for something that every object has',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1-A,firmware,constructor\n2026-03-14 10:00:00Z,RO1-A,light,toString\n2026-03-14 10:00:00Z,RO1-A,__proto__,x\n',
    changes: ['10:00:00.000 RO1 A firmware constructor line 2'],
    rows: { used: 1, unmatched: 2 },
  },
  {
    name: "reads stamps by the phrasebook's own pattern, and others as ever",
    file: 'poll.csv',
    text: 'time;unit;parameter;value\n03.04.26 02-05-06.250 PM;RO1-A;light;off\n2026-04-03 14:05:08;RO1-A;light;steady\n',
    phrasebook: 'time: { format: "dd.MM.yy hh-mm-ss.SSS a" }\n',
    changes: ['14:05:06.250 RO1 A light off line 2', '14:05:06.250..14:05:08.000 RO1 A light steady line 3'],
  },
  {
    name: 'loses a last row that is cut off before its value',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1-A,light,off\n2026-03-14 10:00:10Z,RO1-A,li',
    changes: ['10:00:00.000 RO1 A light off line 2'],
    rows: { used: 1, rejected: 1 },
  },
  {
    name: 'loses a last value that is cut off, where its begin means nothing',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1-A,light,off\n2026-03-14 10:00:10Z,RO1-A,light,stea',
    changes: ['10:00:00.000 RO1 A light off line 2'],
    rows: { used: 1, rejected: 1 },
  },
  {
    name: 'loses a last value that is the begin of one the file knows',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1-A,firmware,6.4.1\n2026-03-14 10:00:10Z,RO1-A,firmware,6.4',
    changes: ['10:00:00.000 RO1 A firmware 6.4.1 line 2'],
    rows: { used: 1, rejected: 1 },
  },
  {
    name: 'keeps a whole last row that only lacks its line end',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1-A,firmware,6.2.0\n2026-03-14 10:00:10Z,RO1-A,firmware,6.4.1',
    changes: [
      '10:00:00.000 RO1 A firmware 6.2.0 line 2',
      '10:00:00.000..10:00:10.000 RO1 A firmware 6.4.1 line 3',
    ],
    rows: { used: 2 },
  },
  {
    name: 'a total at the end is skipped, also where the rows have to be sorted',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:10Z,RO1-A,light,steady\n2026-03-14 10:00:00Z,RO1-A,light,off\nrows,2,,\n',
    changes: ['10:00:00.000 RO1 A light off line 3', '10:00:00.000..10:00:10.000 RO1 A light steady line 2'],
    rows: { read: 3, used: 2, ignored: 1 },
  },
  {
    name: 'a row without a time that is not the last is rejected, though sorting leaves it to the end',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:10Z,RO1-A,light,steady\nrows,2,,\n2026-03-14 10:00:00Z,RO1-A,light,off\n',
    changes: ['10:00:00.000 RO1 A light off line 4', '10:00:00.000..10:00:10.000 RO1 A light steady line 2'],
    rows: { read: 3, used: 2, rejected: 1 },
  },
  {
    name: 'ignores names, values and units as the phrasebook says, though plain English knows the name',
    file: 'poll.csv',
    text: 'time,unit,parameter,value\n2026-03-14 10:00:00Z,RO1-A,light,off\n2026-03-14 10:00:00Z,RO1,partner-ready,n/a\n2026-03-14 10:00:00Z,??,supply,good\n2026-03-14 10:00:00Z,RO1-A,supply,good\n',
    phrasebook: 'ignore: ["^light$", "= n/a$", "^unit [?]+$"]\n',
    changes: ['10:00:00.000 RO1 A supply good line 5'],
    rows: { read: 4, used: 1, ignored: 3, unmatched: 0 },
  },
]);
