/**
 * Puts an element under what was pressed: in a row of its own where that stands in a table, at the end of an item of a list,
 * else right behind it. Gives what takes it away again.
 */
export function putUnder(pressed: Element, element: HTMLElement): () => void {
  const row = pressed.closest('tr');
  if (row === null) {
    const item = pressed.closest('li');
    if (item === null) pressed.after(element);
    else item.append(element);
    return () => element.remove();
  }
  const cell = document.createElement('td');
  cell.colSpan = [...row.cells].reduce((sum, { colSpan }) => sum + colSpan, 0);
  cell.append(element);
  const own = document.createElement('tr');
  own.className = 'opened';
  own.append(cell);
  row.after(own);
  return () => own.remove();
}
