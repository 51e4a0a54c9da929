import type { Consistency } from '../../../../app/model/consistency.ts';
import { bothSides, longestNamed } from '../side-words.ts';
import { isTextured } from '../textured-slot.ts';
import { meetHere } from '../wash-edges.ts';
import { otherSide, wayRound } from './borders-of.ts';
import type { CallFor } from './called.ts';
import { fittedNames } from './fitted-names.ts';
import { rowAt, slotAt } from './wash-in-hand.ts';
import { whileItShines } from './windows.ts';

/** Own figures: soft along most of the way, inside a shape at least twice as large, worth the brush. */
const charged = { soft: 0.6, inside: 0.5, larger: 2, lengthMm: 40, share: 0.005 } as const;

const ladder: readonly Consistency[] = ['tea', 'coffee', 'milk', 'cream', 'butter'];

/**
 * A second colour that lies softly inside a larger shape of the same wash is dropped into it wet; never one
 * thinner than what is there (R6).
 */
export const charging: CallFor = (wash) => {
  const { facts, draft, painted } = wash;
  if (draft.technique === 'glaze' || draft.technique === 'dry brush') return null;
  // Of one paint there is no second colour.
  if (facts.paints.length < 2) return null;
  const { borders } = facts.reading;
  const found = [...painted].flatMap((inner) => {
    const own = slotAt(wash, inner);
    if (own.share < charged.share || isTextured(own, wash.sheetMm2)) return [];
    const round = wayRound(borders, inner);
    return round.borders.flatMap((border) => {
      const outer = otherSide(border, inner);
      const around = facts.slots[outer];
      if (!painted.has(outer) || around?.passage !== own.passage) return [];
      if (around.family === own.family || around.share < charged.larger * own.share) return [];
      if (border.soft < charged.soft || border.lengthMm < charged.lengthMm) return [];
      if (border.lengthMm < charged.inside * round.lengthMm) return [];
      if (!meetHere(facts, draft.slots, inner, outer)) return [];
      const [drop, ground] = [rowAt(wash, inner), rowAt(wash, outer)];
      if (!drop || !ground || drop.puddle === ground.puddle) return [];
      if (ladder.indexOf(drop.consistency) < ladder.indexOf(ground.consistency)) return [];
      return [{ inner, outer, lengthMm: border.lengthMm, share: own.share }];
    });
  });
  if (found.length === 0) return null;
  const names = longestNamed(
    found.map(({ inner, outer, lengthMm }) => [
      bothSides(facts, inner, outer).join(' into '),
      lengthMm,
    ]),
    2,
  );
  return {
    share: found.reduce((sum, { share }) => sum + share, 0),
    touch: {
      technique: 'charging',
      text: fittedNames(
        (into) => `Drop ${into} while it shines, a little thicker than what is there. Let it run.`,
        names,
        ', ',
      ),
      paper: 'shiny',
      minutes: whileItShines(draft),
    },
  };
};
