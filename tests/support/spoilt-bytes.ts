import type { Random } from './seeded.ts';

export const below = (random: Random, most: number): number => Math.floor(random() * most);

export function oneOf<T>(random: Random, list: readonly T[]): T {
  const found = list[below(random, list.length)];
  if (found === undefined) throw new RangeError('an empty list');
  return found;
}

type Bytes = Uint8Array<ArrayBuffer>;

export function joined(...parts: readonly Uint8Array[]): Bytes {
  const out = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** Bytes changed, cut, doubled or blanked, as a bad disk, a bad line or a bad will would: a copy of them. */
export function spoiltBytes(random: Random, whole: Uint8Array): Bytes {
  const bytes = new Uint8Array(whole);
  const from = below(random, bytes.length);
  // Half the time near the end, where the directory of a ZIP lies.
  const place = random() < 0.5 ? from : Math.max(0, bytes.length - 1 - below(random, 900));
  const length = 1 + below(random, 64);
  switch (below(random, 6)) {
    case 0:
      for (let i = 0; i <= below(random, 8); i++) {
        const where = i === 0 ? place : below(random, bytes.length);
        bytes[where] = (bytes[where] ?? 0) ^ (1 << below(random, 8));
      }
      return bytes;
    case 1:
      return bytes.slice(0, place);
    case 2:
      return joined(bytes.subarray(0, place), bytes.subarray(place + length));
    case 3:
      return joined(bytes.subarray(0, place), bytes.subarray(from));
    case 4:
      return bytes.fill(random() < 0.5 ? 0 : 255, place, place + length);
    default:
      for (let i = place; i < place + length && i < bytes.length; i++)
        bytes[i] = below(random, 256);
      return bytes;
  }
}
