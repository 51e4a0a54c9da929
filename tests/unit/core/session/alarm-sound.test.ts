import { expect, test } from 'vitest';
import { longestFileSeconds, soundFile } from '../../../../app/core/session/alarm-sound.ts';
import { chimeTones } from '../../../../app/core/session/easel-settings.ts';

// Fields of the head: Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0, 1991 (RIFF WAVE).

async function samplesOf(quietSeconds: number, calls: boolean) {
  const file = soundFile(quietSeconds, calls ? chimeTones({ kind: 'end', louder: 1 }) : []);
  const bytes = await new Blob([...file.parts]).arrayBuffer();
  return { file, bytes, samples: new Int16Array(bytes, 44) };
}
const loudest = (samples: Int16Array): number =>
  samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

test('the head says what follows it', async () => {
  const { file, bytes } = await samplesOf(2.5, true);
  const view = new DataView(bytes);
  const text = (from: number): string => String.fromCharCode(...new Uint8Array(bytes, from, 4));
  expect([text(0), text(8), text(12), text(36)]).toEqual(['RIFF', 'WAVE', 'fmt ', 'data']);
  expect(view.getUint32(4, true)).toBe(bytes.byteLength - 8);
  expect(view.getUint32(40, true)).toBe(bytes.byteLength - 44);
  // Length of what is told of the format, PCM, one channel, 2 bytes of 8 bits a sample.
  expect(view.getUint32(16, true)).toBe(16);
  expect([20, 22, 32, 34].map((at) => view.getUint16(at, true))).toEqual([1, 1, 2, 16]);
  const [rate, byteRate] = [view.getUint32(24, true), view.getUint32(28, true)];
  expect(byteRate).toBe(rate * view.getUint16(32, true));
  expect(file.seconds).toBeCloseTo((bytes.byteLength - 44) / byteRate, 6);
});

test('a tone begins in its moment, rises within 12 ms, and fades to one part in 10,000 by its end', async () => {
  const tones = [
    { atSeconds: 0, hertz: 500, loudness: 0.5, lengthSeconds: 1 },
    { atSeconds: 1.5, hertz: 1000, loudness: 1, lengthSeconds: 0.5 },
  ] as const;
  const { parts, seconds } = soundFile(0, tones);
  const samples = new Int16Array(await new Blob([...parts]).arrayBuffer(), 44);
  expect([samples.length, seconds]).toEqual([16_000, 2]);
  const wanted = (second: number): number =>
    tones.reduce((sum, { atSeconds, hertz, loudness, lengthSeconds }) => {
      const since = second - atSeconds;
      if (since < 0 || since >= lengthSeconds) return sum;
      const strength = loudness * Math.min(1, since / 0.012) * 10 ** ((-4 * since) / lengthSeconds);
      return sum + strength * Math.sin(2 * Math.PI * hertz * since);
    }, 0);
  for (let i = 0; i < samples.length; i++)
    expect(Math.abs((samples[i] as number) - 32767 * wanted(i / 8000))).toBeLessThan(1.01);
  // Tones that come together are no louder than can be played.
  const both = soundFile(0, [tones[1], { ...tones[1], hertz: 1010 }]);
  const loud = new Int16Array(await new Blob([...both.parts]).arrayBuffer(), 44);
  expect(loudest(loud)).toBe(32_767);
});

test('until it calls nobody hears it, and yet it is not silence; then it is loud', async () => {
  const { samples } = await samplesOf(3.25, true);
  const quiet = samples.subarray(0, 3.25 * 8000);
  expect(loudest(quiet)).toBeGreaterThan(8);
  expect(loudest(quiet)).toBeLessThan(33); // -60 dB of full scale
  expect(loudest(samples.subarray(quiet.length))).toBeGreaterThan(10_000);
});

test('the hum goes on from second to second without a click', async () => {
  const { samples } = await samplesOf(3.25, false);
  expect(samples.length).toBe(3.25 * 8000);
  for (let i = 1; i < samples.length; i++)
    expect(Math.abs((samples[i] ?? 0) - (samples[i - 1] ?? 0))).toBeLessThanOrEqual(1);
});

test('a long wait is cut into files a phone can hold', () => {
  const { seconds, parts } = soundFile(3 * 3600, []);
  expect(seconds).toBe(longestFileSeconds);
  expect(new Set(parts).size).toBeLessThanOrEqual(4); // one second stands for all
});
