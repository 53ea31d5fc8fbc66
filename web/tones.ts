/** Tones of a page whose person switched them on. */
export interface Tones {
  /** A short tone; three where it is urgent. `false`: the browser plays none until something on the page is pressed. */
  play(isUrgent: boolean): boolean;
  end(): void;
}

const [frequency, loudness, length, pause] = [880, 0.2, 0.18, 0.12];

/** Opens the sound of the computer; made without any file. */
export function openTones(): Tones {
  const context = new AudioContext();
  return {
    play(isUrgent) {
      for (let count = 0; count < (isUrgent ? 3 : 1); count += 1) tone(context, count * (length + pause));
      return context.state === 'running';
    },
    end: () => void context.close(),
  };
}

function tone(context: AudioContext, after: number): void {
  const start = context.currentTime + after;
  const volume = new GainNode(context, { gain: loudness });
  volume.connect(context.destination);
  const source = new OscillatorNode(context, { frequency });
  source.connect(volume);
  source.start(start);
  source.stop(start + length);
}
