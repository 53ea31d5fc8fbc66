import { resolve } from 'node:path';
import type { Page } from 'playwright-core';

/** Drags files over a point of the window, as the system would; gives what drops them there. */
export async function dragFiles(
  page: Page,
  at: { readonly x: number; readonly y: number },
  paths: readonly string[],
): Promise<() => Promise<void>> {
  const session = await page.context().newCDPSession(page);
  const data = { items: [], files: paths.map((path) => resolve(path)), dragOperationsMask: 1 };
  const send = async (type: 'dragEnter' | 'dragOver' | 'drop'): Promise<void> => {
    await session.send('Input.dispatchDragEvent', { type, ...at, data });
  };
  await send('dragEnter');
  await send('dragOver');
  return () => send('drop');
}
