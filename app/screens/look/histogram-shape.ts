import { valueOfLightness } from '../../model/munsell-value.ts';

/** Where each bin begins along the scale, 0..100; bin = L* x 2.55. */
const places = Array.from({ length: 257 }, (_, bin) => 10 * valueOfLightness((bin - 0.5) / 2.55));

/** So many of the fullest bins may reach over the top: a burnt-out sky would flatten all the rest. */
const cutOff = 6;

/**
 * An SVG path over the value scale, 100 wide and 100 high: how much of the picture has each value.
 * Heights are square roots, so that small lights and darks are still seen beside large masses.
 */
export function histogramShape(histogram: readonly number[]): string {
  const fullestFirst = [...histogram].sort((x, y) => y - x);
  const most = Math.sqrt(fullestFirst[cutOff] || fullestFirst[0] || 1);
  const tops = histogram.map((pixels, bin) => {
    const height = 100 - (100 * Math.min(most, Math.sqrt(pixels))) / most;
    return `V${height.toFixed(1)}H${(places[bin + 1] ?? 100).toFixed(2)}`;
  });
  return `M0 100${tops.join('')}V100Z`;
}
