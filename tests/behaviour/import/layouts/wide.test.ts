import { wide } from '../../../../src/import/layouts/wide.ts';
import { checkImporter } from '../../../support/check-importer.ts';

checkImporter(wide, [
  {
    name: 'a column per unit and parameter, under any mark between them',
    file: 'wide.csv',
    text: 'Time;RO1-A/Role;RO1-B:Role;Bay 3.RO1-A.Light;RO2 A;partner ready RO1\n2026-03-14 10:00:00.000Z;active;standby;off;x;yes\n',
    changes: [
      '10:00:00.000 RO1 A role active line 2',
      '10:00:00.000 RO1 B role standby line 2',
      '10:00:00.000 RO1 A light off line 2',
    ],
    rows: { read: 1, used: 1 },
  },
  {
    name: 'a value of bad quality was not read, by the column beside it or the one named like it',
    file: 'wide.csv',
    text: 'Time,RO1-A.Light,RO1-A.Light Quality,RO1-B.Light,Q\n2026-03-14 10:00:00.000Z,off,192,steady,Good\n2026-03-14 10:00:10.000Z,steady,0,off,Uncertain\n2026-03-14 10:00:20.000Z,off,192,off,Good\n',
    changes: [
      '10:00:00.000 RO1 A light off line 2',
      '10:00:00.000 RO1 B light steady line 2',
      // The poll at 10:00:10 read neither.
      '10:00:00.000..10:00:20.000 RO1 B light off line 4',
    ],
    rows: { read: 3, used: 2, ignored: 1 },
  },
  {
    name: 'a parameter that is not known is listed, one of a short row is rejected',
    file: 'wide.csv',
    text: 'Time,RO1-A.Light,RO1-B.Light,RO1-B.Humour\n2026-03-14 10:00:00.000Z,off,off,good\n2026-03-14 10:00:10.000Z,off,off,good\n2026-03-14 10:00:20.000Z,off\n',
    changes: ['10:00:00.000 RO1 A light off line 2', '10:00:00.000 RO1 B light off line 2'],
    rows: { read: 3, used: 1, unmatched: 1 },
  },
]);
