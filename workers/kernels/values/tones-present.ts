/** A tone is there if this share of the picture has it: borders between tones are no tones. */
const leastShare = 0.002;
/** Bins that count as one tone, about 2 L*: noise of a camera or a lossy file. */
const tonesWidth = 5;

/**
 * How many tones can be told apart in the picture as it came, from the histogram of its unsimplified
 * lightness: smoothing invents tones on the borders of flat areas, and those must not become bands.
 */
export function tonesPresent(unsimplified: ArrayLike<number>): number {
  let total = 0;
  for (let bin = 0; bin < unsimplified.length; bin++) total += unsimplified[bin] as number;
  let tones = 0;
  for (let bin = 0; bin < unsimplified.length; ) {
    let counted = 0;
    if (!unsimplified[bin]) {
      bin++;
      continue;
    }
    const end = bin + tonesWidth;
    for (; bin < end && bin < unsimplified.length; bin++) counted += unsimplified[bin] as number;
    if (counted >= leastShare * total) tones++;
  }
  return Math.max(1, tones);
}
