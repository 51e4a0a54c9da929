import type { Tone } from './easel-settings.ts';

/**
 * The sound of a wait as a file: nearly silent until it calls. A device plays it on with the screen off, as it would a
 * piece of music, where clocks of a page stand still.
 */

/** Samples a second: enough for the tones, and 16 kB a second. */
const sampleRate = 8000;
const bytesPerSample = 2;
const headBytes = 44;

/** The latest end of one file, s: about 19 MB, the longest a phone should have to hold (own). */
export const longestFileSeconds = 1200;

/** A hum no one hears, that a browser does not take for silence and put to sleep: 25 Hz at -66 dB of full scale (own). */
const humHertz = 25;
const humPeak = Math.round(32767 * 10 ** (-66 / 20));

/** The tones of a call within a file: the stroke of a bell with its first overtone left out, which the rate can't hold. */
function toneSamples(tones: readonly Tone[]): Int16Array<ArrayBuffer> {
  const seconds = Math.max(
    ...tones.map(({ atSeconds, lengthSeconds }) => atSeconds + lengthSeconds),
  );
  const samples = new Float64Array(Math.ceil(seconds * sampleRate));
  for (const { atSeconds, hertz, loudness, lengthSeconds } of tones) {
    const from = Math.round(atSeconds * sampleRate);
    const until = Math.min(samples.length, from + Math.round(lengthSeconds * sampleRate));
    for (let i = from; i < until; i++) {
      const seconds = (i - from) / sampleRate;
      const rises = Math.min(1, seconds / 0.012);
      const fades = 0.0001 ** (seconds / lengthSeconds);
      samples[i] += loudness * rises * fades * Math.sin(2 * Math.PI * hertz * seconds);
    }
  }
  return Int16Array.from(samples, (value) => 32767 * Math.max(-1, Math.min(1, value)));
}

function humSecond(): Int16Array<ArrayBuffer> {
  return Int16Array.from({ length: sampleRate }, (_, i) =>
    Math.round(humPeak * Math.sin((2 * Math.PI * humHertz * i) / sampleRate)),
  );
}

/** RIFF/WAVE, PCM, one channel, 16 bit. */
function headFor(samples: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(headBytes);
  const view = new DataView(bytes.buffer);
  const text = (from: number, letters: string): void => {
    for (let i = 0; i < letters.length; i++) bytes[from + i] = letters.charCodeAt(i);
  };
  const dataBytes = samples * bytesPerSample;
  text(0, 'RIFF');
  view.setUint32(4, headBytes - 8 + dataBytes, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * bytesPerSample, true);
  view.setUint16(32, bytesPerSample, true);
  view.setUint16(34, 8 * bytesPerSample, true);
  text(36, 'data');
  view.setUint32(40, dataBytes, true);
  return bytes;
}

/** A file of sound in its parts: one second of hum stands for all of them, so that only one is held. */
export interface SoundFile {
  readonly parts: readonly BlobPart16[];
  readonly seconds: number;
}
type BlobPart16 = Uint8Array<ArrayBuffer> | Int16Array<ArrayBuffer>;

/**
 * So many seconds of hum, to the sample and at most `longestFileSeconds`, then the tones, where there are any: such
 * parts as a Blob takes. Little-endian machines only, which all that run browsers are.
 */
export function soundFile(quietSeconds: number, tones: readonly Tone[]): SoundFile {
  const quiet = Math.round(Math.max(0, Math.min(longestFileSeconds, quietSeconds)) * sampleRate);
  const hum = humSecond();
  const rest = hum.slice(0, quiet % sampleRate);
  const call = tones.length > 0 ? toneSamples(tones) : new Int16Array(0);
  const hums = Array.from({ length: Math.floor(quiet / sampleRate) }, () => hum);
  const samples = quiet + call.length;
  return { parts: [headFor(samples), ...hums, rest, call], seconds: samples / sampleRate };
}
