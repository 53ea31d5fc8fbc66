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
    name: 'the half in the column names, before the parameter, and a column of the pair',
    file: 'snap.csv',
    text: 'time,pair,A role,B role,A supply,B supply,partner ready\n2026-03-14 10:00:00Z,INTAKE-2,active,absent,good,,no\n',
    changes: [
      '10:00:00.000 INTAKE-2 A role active line 2',
      '10:00:00.000 INTAKE-2 B role none line 2',
      '10:00:00.000 INTAKE-2 A supply good line 2',
      '10:00:00.000 INTAKE-2 pair partner-ready no line 2',
    ],
  },
  {
    name: 'the half in the column names, behind the parameter',
    file: 'snap.csv',
    text: 'time,pair,firmware (slot 1),firmware (slot 2),link a (slot 1)\n2026-03-14 10:00:00Z,RO1,6.4.1,6.2.0,up\n',
    changes: [
      '10:00:00.000 RO1 1 firmware 6.4.1 line 2',
      '10:00:00.000 RO1 2 firmware 6.2.0 line 2',
      '10:00:00.000 RO1 1 link-a up line 2',
    ],
  },
  {
    name: 'names whose words are joined',
    file: 'snap.csv',
    text: 'DateTime,Pair,RoleA,RoleB,PartnerReady,FwVersionB\n2026-03-14 10:00:00Z,RO1,active,standby,false,6.4.1\n',
    changes: [
      '10:00:00.000 RO1 A role active line 2',
      '10:00:00.000 RO1 B role standby line 2',
      '10:00:00.000 RO1 pair partner-ready no line 2',
      '10:00:00.000 RO1 B firmware 6.4.1 line 2',
    ],
  },
  {
    name: 'two supplies of a pair are no supplies of its halves',
    file: 'snap.csv',
    text: 'time,pair,supply A,supply B,partner ready\n2026-03-14 10:00:00Z,RO1,good,fault,yes\n',
    changes: ['10:00:00.000 RO1 pair partner-ready yes line 2'],
  },
  {
    name: 'where the row says the half, a letter in a column name says none',
    file: 'snap.csv',
    text: 'time,pair,half,role,role A,role B\n2026-03-14 10:00:00Z,RO1,A,active,active,standby\n',
    changes: ['10:00:00.000 RO1 A role active line 2'],
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
