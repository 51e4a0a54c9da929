import { colourDifference } from '../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../app/core/colour/lab.ts';
import { colourOfWashes } from '../../app/core/paint/colour-of-washes.ts';
import type { Paint } from '../../app/core/paint/paint.ts';
import type { Slot } from '../../app/core/reading/slot.ts';

/** One load in the middle of each consistency: tea, coffee, milk, cream, butter. */
const fiveLoads = [0.4, 1.2, 3.5, 10, 24] as const;

const away2 = (one: Lab, other: Lab): number =>
  (one[0] - other[0]) ** 2 + (one[1] - other[1]) ** 2 + (one[2] - other[2]) ** 2;

const nearestOf = (centres: readonly Lab[], lab: Lab): number =>
  centres.reduce(
    (best, centre, i) => (away2(centre, lab) < away2(centres[best] as Lab, lab) ? i : best),
    0,
  );

/** The first centre is the largest slot, every next one the slot worst served so far. */
function firstCentres(slots: readonly Slot[], count: number): Lab[] {
  const largest = slots.reduce((one, two) => (two.share > one.share ? two : one));
  const centres: Lab[] = [largest.target];
  while (centres.length < count) {
    const missed = ({ share, target }: Slot): number =>
      share * away2(target, centres[nearestOf(centres, target)] as Lab);
    centres.push(slots.reduce((one, two) => (missed(two) > missed(one) ? two : one)).target);
  }
  return centres;
}

/** Lloyd (1982), IEEE Trans. Inf. Theory 28, 129-137, weighted by area. */
function posterColours(slots: readonly Slot[], count: number): Lab[] {
  let centres = firstCentres(slots, count);
  for (let round = 0; round < 50; round++) {
    centres = centres.map((centre, n): Lab => {
      const own = slots.filter(({ target }) => nearestOf(centres, target) === n);
      const area = own.reduce((sum, { share }) => sum + share, 0);
      if (area === 0) return centre;
      const mean = (i: 0 | 1 | 2): number =>
        own.reduce((sum, { share, target }) => sum + share * target[i], 0) / area;
      return [mean(0), mean(1), mean(2)];
    });
  }
  return centres;
}

/**
 * What somebody without a plan would do: the picture in `count` flat poster colours (k-means of the targets), for
 * each the single paint that comes nearest (CIEDE2000) at the best of five consistencies, one layer on white
 * paper. The colour of every slot, in their order; whites stay paper, `paper`.
 */
export function naivePlan(
  slots: readonly Slot[],
  paints: readonly Paint[],
  count: number,
  paper: Lab,
): Lab[] {
  const painted = slots.filter(({ reserve }) => !reserve);
  const centres = posterColours(painted, Math.min(count, painted.length));
  const singles = paints.flatMap((paint) =>
    fiveLoads.map((load) => colourOfWashes([{ paints: [paint], parts: [1], load }])),
  );
  const poster = centres.map((centre) =>
    singles.reduce((one, two) =>
      colourDifference(centre, two) < colourDifference(centre, one) ? two : one,
    ),
  );
  return slots.map(({ reserve, target }) =>
    reserve ? paper : (poster[nearestOf(centres, target)] as Lab),
  );
}
