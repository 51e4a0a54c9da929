import type { Lab } from './lab.ts';

/** Below this nobody is misled, L*. */
const leastSeen = 5;

/**
 * How much lighter a strong colour looks than its L* says (Helmholtz-Kohlrausch effect), in L*.
 * Source: Fairchild, Pirrotta, 'Predicting the lightness of chromatic object colors using CIELAB',
 * Color Research and Application 16 (1991), from memory.
 */
export function looksLighterBy([lightness, a, b]: Lab): number {
  const hue = Math.atan2(b, a);
  const byHue = 0.116 * Math.abs(Math.sin((hue - Math.PI / 2) / 2)) + 0.085;
  return (2.5 - 0.025 * lightness) * byHue * Math.hypot(a, b);
}

/**
 * The same where a painter is told: reds, blues and violets that look over 5 L* lighter; else null.
 * Hue limits are those of this project's colour names (common practice, no source).
 */
export function misleadingBy(lab: Lab): number | null {
  const hue = ((Math.atan2(lab[2], lab[1]) * 180) / Math.PI + 360) % 360;
  const misleads = hue < 42 || hue >= 240;
  const by = looksLighterBy(lab);
  return misleads && by > leastSeen ? by : null;
}
