import { style } from '../src/report/style.ts';
import './components/steadypair-page.ts';
import { stayOnDrop } from './stay-on-drop.ts';

// The ground, the ink and the ruled tables are the report's; page.css, behind it, has what only the page needs.
const sheet = document.createElement('style');
sheet.textContent = style;
document.head.prepend(sheet);
stayOnDrop();
