import { snapshots } from '../../../../src/import/layouts/snapshots.ts';
import { checkImporter } from '../../../support/check-importer.ts';

checkImporter(snapshots, [
  {
    name: 'addressed by half: every other column is a parameter',
    file: 'snap.csv',
    text: 'time,unit,light,partner ready\n2026-03-14 10:00:00Z,RO1-A,off,yes\n2026-03-14 10:00:10Z,RO1-A,off,no\n',
    changes: [
      '10:00:00.000 RO1 A light off line 2',
      '10:00:00.000 RO1 pair partner-ready yes line 2',
      '10:00:00.000..10:00:10.000 RO1 pair partner-ready no line 3',
    ],
    rows: { read: 2, used: 2 },
  },
  {
    name: 'addressed by role: the role column says which',
    file: 'snap.csv',
    text: 'time,pair,role,serial\n2026-03-14 10:00:00Z,RO1,active,T2-1\n2026-03-14 10:00:00Z,RO1,standby,T2-2\n',
    changes: ['10:00:00.000 RO1 active serial T2-1 line 2', '10:00:00.000 RO1 standby serial T2-2 line 3'],
    rows: { used: 2 },
  },
  {
    name: 'addressed by role in the column names',
    file: 'snap.csv',
    text: 'time,pair,active serial,standby serial\n2026-03-14 10:00:00Z,RO1,T2-1,T2-2\n',
    changes: ['10:00:00.000 RO1 active serial T2-1 line 2', '10:00:00.000 RO1 standby serial T2-2 line 2'],
  },
  {
    name: 'a role beside a half is a state of that half, through every switchover',
    file: 'snap.csv',
    text: 'time,unit,role\n2026-03-14 10:00:00Z,RO1-A,active\n2026-03-14 10:00:10Z,RO1-A,standby\n2026-03-14 10:00:20Z,RO1-A,standby\n',
    changes: [
      '10:00:00.000 RO1 A role active line 2',
      '10:00:00.000..10:00:10.000 RO1 A role standby line 3',
    ],
    rows: { read: 3, used: 2, unchanged: 1 },
  },
]);
