import type { PaperChoice } from '../../drying/paper-choice.ts';
import { otherSide, wayRound } from '../../reading/edges/slot-borders.ts';
import { bothSides, longestNamed } from '../edges/wash-edges.ts';
import type { SmallTechnique } from '../plan.ts';
import { paintsIn } from '../plan-facts.ts';
import { rowsOver } from '../steps/finishing-steps.ts';
import type { StepDraft } from '../steps/step-draft.ts';
import { fittedNames, slotAt, type TechniqueDetector } from './technique-proposal.ts';
import { whileDamp } from './wetness-windows.ts';

/** Own figures: small soft lights, mostly inside the darker shape and not far from it in value. */
const lifted = { soft: 0.6, inside: 0.5, least: 6, most: 30, lengthMm: 40, small: 3 } as const;

/** Small soft lights inside a shape whose paints all lift are taken out while it is damp (R11). */
export const dampLifting: TechniqueDetector = (wash) => {
  const { facts, draft, finished, painted } = wash;
  if (draft.technique === 'glaze' || draft.technique === 'dry brush') return null;
  const { borders } = facts.reading;
  const found = [...painted].flatMap((light) => {
    const own = slotAt(wash, light);
    if (own.smallShapes < lifted.small) return [];
    const round = wayRound(borders, light);
    return round.borders.flatMap((border) => {
      const dark = otherSide(border, light);
      const around = facts.slots[dark];
      if (!around || !finished.has(dark) || around.share < own.share) return [];
      const lighter = own.target[0] - around.target[0];
      if (lighter < lifted.least || lighter > lifted.most) return [];
      if (border.soft < lifted.soft || border.lengthMm < lifted.lengthMm) return [];
      if (border.lengthMm < lifted.inside * round.lengthMm) return [];
      const paints = paintsIn(facts, rowsOver(facts, dark));
      if (paints.length === 0 || paints.some(({ properties }) => properties.staining !== 0))
        return [];
      return [{ light, dark, lengthMm: border.lengthMm, share: own.share }];
    });
  });
  if (found.length === 0) return null;
  const names = longestNamed(
    found.map(({ light, dark, lengthMm }) => [bothSides(facts, dark, light)[0], lengthMm]),
    2,
  );
  return {
    share: found.reduce((sum, { share }) => sum + share, 0),
    touch: {
      technique: 'lifting',
      text: fittedNames(
        (shapes) =>
          `Once the shine has gone, draw the small soft lights out of ${shapes} with a clean thirsty brush. Add no water.`,
        names,
        ' and ',
      ),
      paper: 'damp',
      minutes: whileDamp(draft),
    },
  };
};

/** Whites that come back last can be scraped out of cotton paper; soft paper tears (common practice, no source). */
export function scraping(
  { fibre }: PaperChoice,
  { technique }: StepDraft,
  lights: number,
): SmallTechnique[] {
  if (fibre !== 'cotton' || lights === 0 || technique === 'scraping') return [];
  return [
    {
      technique: 'scraping',
      text: 'On cotton paper a sharp blade, drawn flat and lightly, takes the paint off for a sparkle. The very last thing: nothing goes over it.',
      paper: 'bone dry',
      minutes: null,
    },
  ];
}
