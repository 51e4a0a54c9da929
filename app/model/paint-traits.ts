import type { PaintProperties } from './paint.ts';

export const transparencyWords = {
  T: 'transparent',
  ST: 'half transparent',
  SO: 'half opaque',
  O: 'opaque',
} as const;
export const stainingWords = ['lifts easily', 'stains a little', 'stains'] as const;
export const granulationWords = ['even', 'granulates a little', 'granulates'] as const;

/** What the trade says of a paint, in a line: 'transparent, stains, even, lightfastness I'. */
export function paintTraits(properties: PaintProperties): string {
  const light = properties.lightfastness;
  return [
    properties.transparency && transparencyWords[properties.transparency],
    properties.staining !== null && stainingWords[properties.staining],
    properties.granulation !== null && granulationWords[properties.granulation],
    light ? `lightfastness ${light} (from memory)` : 'lightfastness unknown',
  ]
    .filter(Boolean)
    .join(', ');
}
