/** The screen kept on while a view is open. */
export interface WakeLock {
  /** Whether it stays on, and else why not and what to do. */
  said(): string;
  end(): void;
}

/**
 * Keeps the screen on until it is ended; a browser gives that up while its window is hidden, and it is asked for again. `changed` is
 * told whenever `said` says something else.
 */
export function keepAwake(changed: () => void): WakeLock {
  let said = '';
  let sentinel: WakeLockSentinel | null = null;
  let isEnded = false;
  const say = (words: string): void => {
    said = words;
    changed();
  };
  const ask = async (): Promise<void> => {
    if (document.visibilityState !== 'visible') return;
    try {
      const lock = await navigator.wakeLock.request('screen');
      if (isEnded) return await lock.release();
      sentinel = lock;
      lock.addEventListener('release', () => {
        if (!isEnded) say(`The browser no longer keeps the screen on. ${itself}`);
      });
      say('The screen stays on while this view is open.');
    } catch (error) {
      if (!(error instanceof DOMException)) throw error;
      if (!isEnded) say(`The browser does not keep the screen on (${error.name}). ${itself}`);
    }
  };
  const onVisible = (): void => void ask();
  if ('wakeLock' in navigator) {
    document.addEventListener('visibilitychange', onVisible);
    void ask();
  } else say(`This browser cannot keep the screen on. ${itself}`);
  return {
    said: () => said,
    end() {
      isEnded = true;
      document.removeEventListener('visibilitychange', onVisible);
      void sentinel?.release();
    },
  };
}

const itself = 'Set this computer so that its screen stays on.';
