import type { Lab } from './lab.ts';
import { valueOfLightness } from './munsell-value.ts';

/** How much darker a wash looks while wet, in words: 'wet it looks half a value darker'. */
export function wetLook(dry: Lab, wet: Lab): string {
  const by = valueOfLightness(dry[0]) - valueOfLightness(wet[0]);
  const words =
    by < 0.07
      ? 'about the same'
      : by < 0.17
        ? 'a touch darker'
        : by < 0.375
          ? 'a quarter of a value darker'
          : by < 0.625
            ? 'half a value darker'
            : by < 0.875
              ? 'three quarters of a value darker'
              : by < 1.25
                ? 'a whole value darker'
                : `${by.toFixed(1)} values darker`;
  return `wet it looks ${words}`;
}
