import { fieldNotes } from '../../../src/import/field-notes.ts';
import { checkImporter } from '../../support/check-importer.ts';

checkImporter(fieldNotes, [
  {
    name: 'a date and a pair hold for the lines that follow; a note lasts its minute',
    file: 'notes.txt',
    text: 'Pair RO1\n14 Mar 2026\n09:14 pulled standby from slot B\n09:41 switched over\n10:02 cabinet closed\n',
    changes: [
      '09:14:00.000..09:15:00.000 RO1 B removed - line 3',
      '09:41:00.000..09:42:00.000 RO1 pair switchover-command - line 4',
      '10:02:00.000..10:03:00.000 RO1 pair note cabinet closed line 5',
    ],
    rows: { read: 5, used: 3, ignored: 2 },
  },
  {
    name: 'without a date the day of the other files counts',
    file: 'notes.txt',
    text: 'RO1\n09:14 fitted new module in slot B\n',
    neighbour: Date.UTC(2026, 2, 14, 8),
    changes: ['09:14:00.000..09:15:00.000 RO1 B inserted - line 2'],
  },
]);
