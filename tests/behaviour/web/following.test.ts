import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type Following, followFolders } from '../../../web/following.ts';
import { type FakeFile, fakeFolder } from '../../support/fake-folder.ts';

/** A page that takes what is given to it at once. */
function page(isEmpty = true): {
  readonly element: EventTarget;
  readonly host: { isBusy: boolean };
  readonly given: string[];
  readonly following: Following;
} {
  const element = new EventTarget();
  const given: string[] = [];
  const host = { isBusy: false };
  for (const kind of ['files', 'followed-files', 'problem'])
    element.addEventListener(kind, (event) => {
      if (!(event instanceof CustomEvent)) return;
      const names = (event.detail.files ?? []).map((f: { name: string }) => f.name);
      given.push(`${kind}: ${names.join(' ')}`);
    });
  const following = followFolders(element, {
    isBusy: () => host.isBusy,
    isEmpty: () => isEmpty,
    changed: () => undefined,
  });
  return { element, host, given, following };
}

async function follow(element: EventTarget, root: FileSystemDirectoryHandle): Promise<void> {
  element.dispatchEvent(new CustomEvent('follow', { detail: root }));
  await vi.advanceTimersByTimeAsync(10);
}

const second = (): Promise<unknown> => vi.advanceTimersByTimeAsync(1000);
const log = (text: string, at: number): FakeFile => ({ text, at });

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('a folder that is followed', () => {
  test('gives its files once, then what grew, shrank and came; what vanished is said', async () => {
    const files = new Map([
      ['a.log', log('one', 1)],
      ['deep/b.log', log('one', 1)],
    ]);
    const { element, given, following } = page();
    await follow(element, fakeFolder('logs', files));
    expect(given).toEqual(['files: logs/deep/b.log logs/a.log']);
    await second();
    expect(given.length).toBe(1);
    files.set('a.log', log('one two', 2));
    files.set('c.log', log('new', 2));
    await second();
    expect(given[1]).toBe('followed-files: logs/c.log logs/a.log');
    expect(following.now()).toEqual({ name: 'logs', files: 3, said: [], problem: null });
    expect([following.modified('logs/a.log'), following.modified('other')]).toEqual([2, null]);
    expect(await (await following.fileNow('logs/a.log'))?.text()).toBe('one two');
    files.set('a.log', log('x', 3));
    files.delete('c.log');
    await second();
    expect(given[2]).toBe('followed-files: logs/a.log');
    expect(following.now()?.said).toEqual([
      'logs/a.log was replaced by other content and was read again from the start.',
      'logs/c.log is no longer in the folder; what was read of it still counts.',
    ]);
    expect(await following.fileNow('logs/c.log')).toBeNull();
    files.set('c.log', log('new', 2));
    await second();
    expect(given.length).toBe(3);
    expect(following.now()?.said.length).toBe(1);
  });

  test('without files is waited on: it is read as empty once, and its first file when it comes', async () => {
    const files = new Map<string, FakeFile>();
    const { element, given } = page();
    await follow(element, fakeFolder('logs', files));
    await second();
    expect(given).toEqual(['files: ']);
    files.set('a.log', log('', 1));
    await second();
    files.set('a.log', log('one', 2));
    await second();
    expect(given).toEqual(['files: ', 'files: logs/a.log']);
  });

  test('that cannot be read for a while is said, and read on when it is back', async () => {
    const files = new Map([['a.log', log('one', 1)]]);
    const root = fakeFolder('logs', files);
    const { element, given, following } = page();
    await follow(element, root);
    const values = root.values;
    let why = 'NotFoundError';
    root.values = () => {
      throw new DOMException('no', why);
    };
    await second();
    expect(following.now()?.problem).toContain('its drive or share is not there. The page keeps trying.');
    why = 'NotAllowedError';
    await second();
    expect(following.now()?.problem).toContain('choose it again');
    root.values = values;
    files.set('a.log', log('one two', 2));
    await second();
    expect(following.now()?.problem).toBeNull();
    expect(given[1]).toBe('followed-files: logs/a.log');
  });

  test('waits while other files are read or a person is asked', async () => {
    const files = new Map([['a.log', log('one', 1)]]);
    const { element, host, given } = page();
    await follow(element, fakeFolder('logs', files));
    host.isBusy = true;
    files.set('a.log', log('one two', 2));
    await second();
    expect(given.length).toBe(1);
    host.isBusy = false;
    await second();
    expect(given.length).toBe(2);
  });

  test.each<[string, (element: EventTarget) => void]>([
    ['a person ends it', (e) => e.dispatchEvent(new CustomEvent('unfollow', { detail: null }))],
    ['its reading is cancelled', (e) => e.dispatchEvent(new CustomEvent('cancel', { detail: null }))],
    [
      'other files take the place of all',
      (e) => e.dispatchEvent(new CustomEvent('files', { detail: { files: [], how: 'replace' } })),
    ],
  ])('is left alone once %s', async (_, end) => {
    const files = new Map([['a.log', log('one', 1)]]);
    const { element, given, following } = page();
    await follow(element, fakeFolder('logs', files));
    end(element);
    expect(following.now()).toBeNull();
    const count = given.length;
    files.set('a.log', log('one two', 2));
    await second();
    expect(given.length).toBe(count);
  });

  test('goes on when its own files were to be read in place of all, and not when they were refused', async () => {
    const { element, following } = page(false);
    let offered: readonly unknown[] = [];
    element.addEventListener('files', (event) => {
      if (event instanceof CustomEvent) offered = event.detail.files;
    });
    await follow(element, fakeFolder('logs', new Map([['a.log', log('one', 1)]])));
    element.dispatchEvent(new CustomEvent('files', { detail: { files: offered, how: 'replace' } }));
    expect(following.now()?.name).toBe('logs');
    element.dispatchEvent(new CustomEvent('files', { detail: { files: offered, how: 'not' } }));
    expect(following.now()).toBeNull();
  });

  test('does not give a file again that a person took away', async () => {
    const files = new Map([['a.log', log('one', 1)]]);
    const { element, given, following } = page();
    await follow(element, fakeFolder('logs', files));
    element.dispatchEvent(new CustomEvent('remove-file', { detail: 'logs/a.log' }));
    files.set('a.log', log('one two', 2));
    await second();
    expect([given.length, following.now()?.said]).toEqual([1, []]);
    files.set('b.log', log('one', 2));
    await second();
    expect(given[1]).toBe('followed-files: logs/b.log');
  });

  test('with more than 2,000 files is no folder of logs', async () => {
    const files = new Map(Array.from({ length: 2001 }, (_, n) => [`${n}.log`, log('one', 1)]));
    const { element, given, following } = page();
    await follow(element, fakeFolder('logs', files));
    await second();
    expect(given).toEqual([]);
    expect(following.now()?.problem).toBe(
      'It holds more than 2,000 files. Follow the folder that the logs are written to.',
    );
  });
});
