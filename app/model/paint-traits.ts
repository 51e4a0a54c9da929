import type { PaintProperties } from './paint.ts';

const transparency = {
  T: 'transparent',
  ST: 'half transparent',
  SO: 'half opaque',
  O: 'opaque',
} as const;
const staining = ['lifts easily', 'stains a little', 'stains'] as const;
const granulation = ['even', 'granulates a little', 'granulates'] as const;

/** What the trade says of a paint, in a line: 'transparent, stains, even, lightfastness I'. */
export function paintTraits(properties: PaintProperties): string {
  const light = properties.lightfastness;
  return [
    properties.transparency && transparency[properties.transparency],
    properties.staining !== null && staining[properties.staining],
    properties.granulation !== null && granulation[properties.granulation],
    light ? `lightfastness ${light} (from memory)` : 'lightfastness unknown',
  ]
    .filter(Boolean)
    .join(', ');
}
