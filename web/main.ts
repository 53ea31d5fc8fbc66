import { style } from '../src/report/style.ts';
import './components/about-page.ts';
import './components/steadypair-page.ts';
import { keepPaper } from './paper.ts';
import { stayOnDrop } from './stay-on-drop.ts';

// The ground, the ink and the ruled tables are the report's; page.css, behind it, has what only the page needs.
const sheet = document.createElement('style');
sheet.textContent = style;
document.head.prepend(sheet);
stayOnDrop();
const page = document.querySelector('steadypair-page');
if (page instanceof HTMLElement) keepPaper(page);
