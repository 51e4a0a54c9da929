import type { OutlineShapes } from './outline-shapes.ts';
import type { PixelSize } from './pixel-size.ts';
import type { Slot } from './slot.ts';

/** Steps of value in which neighbours are compared, L*: within a step the longer border decides. */
const valueStep = 4;

/** How many pixel sides every two shapes share. */
function sharedSides({ labels, areasPx }: OutlineShapes, { width, height }: PixelSize) {
  const shared = areasPx.map(() => new Map<number, number>());
  const meet = (one: number, other: number): void => {
    if (one === other) return;
    const [of, at] = [shared[one] as Map<number, number>, shared[other] as Map<number, number>];
    of.set(other, (of.get(other) ?? 0) + 1);
    at.set(one, (at.get(one) ?? 0) + 1);
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const label = labels[i] as number;
      if (x + 1 < width) meet(label, labels[i + 1] as number);
      if (y + 1 < height) meet(label, labels[i + width] as number);
    }
  }
  return shared;
}

/**
 * The shape that each one is part of once those smaller than their `leastPx` have gone, smallest first,
 * to the neighbour nearest in planned value, never over the line of the subject.
 */
export function joinSmallShapes(
  shapes: OutlineShapes,
  slots: readonly Slot[],
  size: PixelSize,
  leastPx: readonly number[],
): number[] {
  const { areasPx, slots: slotOf } = shapes;
  const into = areasPx.map((_, i) => i);
  const area = [...areasPx];
  const shared = sharedSides(shapes, size);
  const whole = (shape: number): number => {
    let at = shape;
    while (into[at] !== at) at = into[at] as number;
    return at;
  };
  const slot = (shape: number): Slot | undefined => slots[slotOf[shape] as number];

  function nearest(shape: number): number {
    const own = slot(shape);
    const near = new Map<number, number>();
    for (const [other, sides] of shared[shape] ?? []) {
      const root = whole(other);
      if (root !== shape) near.set(root, (near.get(root) ?? 0) + sides);
    }
    shared[shape] = near;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let longest = 0;
    for (const [other, sides] of near) {
      const beside = slot(other);
      if (!own || !beside || own.passage !== beside.passage) continue;
      // What is smaller and kept, a sparkle or an accent, does not grow by what surrounds it.
      if ((area[other] as number) < (area[shape] as number)) continue;
      const away = Math.round(Math.abs(own.target[0] - beside.target[0]) / valueStep);
      if (away > least || (away === least && sides <= longest)) continue;
      [best, least, longest] = [other, away, sides];
    }
    return best;
  }

  let small = into.filter((i) => (area[i] as number) < (leastPx[i] as number));
  while (small.length > 0) {
    small.sort((one, other) => (area[one] as number) - (area[other] as number) || one - other);
    let joined = 0;
    for (const shape of small) {
      if (into[shape] !== shape || (area[shape] as number) >= (leastPx[shape] as number)) continue;
      const to = nearest(shape);
      if (to === -1) continue;
      into[shape] = to;
      area[to] = (area[to] as number) + (area[shape] as number);
      const kept = shared[to] as Map<number, number>;
      for (const [other, sides] of shared[shape] as Map<number, number>)
        kept.set(other, (kept.get(other) ?? 0) + sides);
      joined++;
    }
    if (joined === 0) break;
    small = small.filter((i) => into[i] === i && (area[i] as number) < (leastPx[i] as number));
  }
  return into.map((_, i) => whole(i));
}
