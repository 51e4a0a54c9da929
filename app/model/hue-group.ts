import type { PaintCard } from './paint.ts';

export const hueGroups = [
  'yellow',
  'orange',
  'red',
  'violet',
  'blue',
  'green',
  'earth',
  'grey',
] as const;
export type HueGroup = (typeof hueGroups)[number];

/** Ends of the hues, CIELAB hue angle in degrees. Own limits. */
const ends: readonly (readonly [number, HueGroup])[] = [
  [45, 'red'],
  [75, 'orange'],
  [118, 'yellow'],
  [205, 'green'],
  [295, 'blue'],
  [335, 'violet'],
  [360, 'red'],
];

/** Earths by Colour Index name: iron oxides, ochres, siennas, umbers, green earth. From memory. */
const earth = /^(PBr\d+|PY4[23]|PR10[12]|PG23)(:|$)/;
const greyChroma = 10;

/** CIELAB hue angle 0..360 of its middle tint, and its chroma. */
export function hueOf({ ladder }: Pick<PaintCard, 'ladder'>): { angle: number; chroma: number } {
  const [, a, b] = ladder[Math.floor(ladder.length / 2)] ?? [0, 0, 0];
  return { angle: ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360, chroma: Math.hypot(a, b) };
}

/** The group a painter looks for a paint in. */
export function hueGroup(card: Pick<PaintCard, 'ladder' | 'ci'>): HueGroup {
  const { angle, chroma } = hueOf(card);
  if (chroma < greyChroma) return 'grey';
  if (card.ci.some((name) => earth.test(name))) return 'earth';
  return ends.find(([end]) => angle <= end)?.[1] ?? 'red';
}
