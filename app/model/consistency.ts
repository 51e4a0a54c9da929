/**
 * The trade's ladder from watery to stiff. The words are common practice (no standard exists);
 * the limits in load are this project's own.
 */
export type Consistency = 'tea' | 'coffee' | 'milk' | 'cream' | 'butter';

/** load: amount of paint per area, 1 = the pale wash of the optics table. */
export function consistencyOf(load: number): Consistency {
  if (load < 0.7) return 'tea';
  if (load < 2) return 'coffee';
  if (load < 6) return 'milk';
  if (load < 16) return 'cream';
  return 'butter';
}

export const consistencySign: Record<Consistency, string> = {
  tea: 'runs like water, the bottom of the well shows',
  coffee: 'runs, the bottom is hard to see',
  milk: 'moves slowly and shimmers',
  cream: 'does not run when you tilt the palette',
  butter: 'stiff, as from the tube',
};
