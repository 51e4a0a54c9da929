import { colourDifference } from '../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../app/core/colour/lab.ts';
import { labOfReflectance } from '../../../app/core/colour/spectrum.ts';
import { advise } from '../../../app/core/compare/advise.ts';
import { lightnessVerdict, type ShapeVerdict } from '../../../app/core/compare/comparison.ts';
import { laidBy, layersOn, staysOf } from '../../../app/core/compare/mend.ts';
import { mendedPlan } from '../../../app/core/compare/mended-plan.ts';
import {
  isOfNextWash,
  type TakenAdvice,
  takenAdvice,
} from '../../../app/core/compare/taken-advice.ts';
import { paperInside } from '../../../app/core/paint/colour-of-washes.ts';
import type { Part } from '../../../app/core/paint/mix.ts';
import type { Paint } from '../../../app/core/paint/paint.ts';
import { type Step, surfaceOf, type WashPlan } from '../../../app/core/plan/plan.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import { type Hand, layered, off, tubesOf } from '../simulated-painter.ts';

/** A layer as it really lies on a slot: ml/m2 of tube paint, her hand's error in it. */
interface RealLayer {
  readonly parts: readonly Part[];
  load: number;
}

/** When she compares: never, after the first wash, or after every one. */
export type Comparing = 'never' | 'first' | 'every';

/** How far a last sheet is from its plan, by area. */
export interface SheetMiss {
  /** Median over the painted area of |dL*|, and mean CIEDE2000. */
  readonly lightness: number;
  readonly colour: number;
  readonly advice: number;
}

const steady: Hand = { strength: 0, ratio: 0, spread: 'normal' };

/** The dry colour of a slot under its layers, with tubes as they are. */
function colourOf(plan: WashPlan, layers: readonly RealLayer[], tubes: readonly Paint[]): Lab {
  const surface = surfaceOf(plan);
  const sheet = paperInside(surface);
  for (const { parts, load } of layers) {
    const sum = parts.reduce((all, each) => all + each.parts, 0);
    const depth = (of: 'K' | 'S', band: number): number =>
      parts.reduce((all, each) => {
        const paint = tubes.find(({ id }) => id === each.paint) as Paint;
        return all + (each.parts / sum) * (paint.strength ?? 1) * (paint[of][band] as number);
      }, 0) * load;
    for (let band = 0; band < sheet.length; band++)
      sheet[band] = layered(depth('K', band), depth('S', band), sheet[band] as number);
  }
  return labOfReflectance(sheet, surface);
}

const plus = (one: Lab, two: Lab, three: Lab): Lab => [
  one[0] + two[0] - three[0],
  one[1] + two[1] - three[1],
  one[2] + two[2] - three[2],
];

/**
 * A sheet painted slot by slot by a hand and tubes that are off, who compares it, takes all the advice she is given,
 * and carries it out with the same hand. Measured exactly but for `noise`, a deviation in L*. The plan's own colours
 * stand for what a steady hand would have painted.
 */
export function paintedComparing(
  plan: WashPlan,
  reading: Reading,
  comparing: Comparing,
  { hand, noise }: { readonly hand: Hand; readonly noise: number },
  random: () => number,
): SheetMiss {
  const tubes = tubesOf(plan.optics, hand, random);
  const came: RealLayer[][] = plan.slots.map(() => []);
  const meant: RealLayer[][] = plan.slots.map(() => []);
  const opaque = new Map<number, Lab>();
  const taken: TakenAdvice[] = [];
  const seen = (slot: number): Lab =>
    opaque.get(slot) ?? colourOf(plan, came[slot] as RealLayer[], tubes);
  const washes = plan.steps.filter(({ kind }) => kind === 'wash');
  for (const [nth, step] of washes.entries()) {
    for (const id of step.mixes) {
      const error = off(random, hand.strength, hand);
      for (const slot of plan.slots.keys()) {
        const laid = laidBy(plan, step, slot);
        if (laid?.mix.id !== id) continue;
        const otherwise = taken.find(
          (each) => each.slot === slot && isOfNextWash(each.mending) && each.before === step.key,
        );
        const load = otherwise?.load ?? laid.load;
        (came[slot] as RealLayer[]).push({ parts: laid.parts, load: load * error });
        (meant[slot] as RealLayer[]).push({ parts: laid.parts, load: laid.load });
      }
    }
    if (comparing === 'never' || (comparing === 'first' && nth > 0)) continue;
    const revised = mendedPlan(plan, reading, taken);
    const own = revised.steps.find(({ key }) => key === step.key) as Step;
    const rows = plan.slots.flatMap((each, slot): ShapeVerdict[] => {
      if (each.reserve || (meant[slot] as RealLayer[]).length === 0) return [];
      const expected = own.after[slot] as Lab;
      const painted = plus(
        step.after[slot] as Lab,
        seen(slot),
        colourOf(plan, meant[slot] as RealLayer[], plan.optics),
      );
      const blur = noise * 2 * (random() + random() + random() - 1.5);
      const measured: Lab = [painted[0] + blur, painted[1], painted[2]];
      const difference = measured[0] - expected[0];
      const { share, band, family, passage } = each;
      return [
        {
          ...{ slot, shapes: [slot], share, measuredShare: share, at: [0.5, 0.5] },
          ...{ expected, measured, band, family, passage, difference, drift: [] },
          verdict: lightnessVerdict(difference),
        },
      ];
    });
    const next = plan.steps.find(({ n }) => n > step.n)?.key ?? null;
    for (const advice of advise(rows, [], { sheet: reading.sheet }, plan, step.n, () => 1)) {
      const one = takenAdvice(advice, step.key, next, [], plan);
      taken.push(one);
      carryOut(one);
    }
  }

  /** Done at once where no later wash does it; a glaze is off as every wash is. */
  function carryOut({ mending, slot, parts, load, predicted }: TakenAdvice): void {
    const own = came[slot] as RealLayer[];
    if (mending === 'glaze' || mending === 'lay-missing')
      own.push({ parts, load: load * off(random, hand.strength, hand) });
    if (mending === 'opaque-white') opaque.set(slot, predicted);
    if (mending !== 'lift') return;
    // Paint is rubbed off in small steps until it looks as predicted, or no more goes.
    const least = staysOf(plan, layersOn(plan, slot, Number.POSITIVE_INFINITY));
    for (let left = 1; left > least && seen(slot)[0] < predicted[0]; left *= 0.97)
      for (const layer of own) layer.load *= 0.97;
  }

  const misses = plan.slots.flatMap(({ share, reserve }, slot) => {
    if (reserve || (meant[slot] as RealLayer[]).length === 0) return [];
    const wanted = colourOf(plan, meant[slot] as RealLayer[], plan.optics);
    const is = seen(slot);
    return [{ share, dl: Math.abs(is[0] - wanted[0]), de: colourDifference(is, wanted) }];
  });
  const area = misses.reduce((sum, { share }) => sum + share, 0);
  let [half, lightness] = [0, 0];
  for (const { share, dl } of misses.toSorted((one, two) => one.dl - two.dl)) {
    if (half >= area / 2) break;
    half += share;
    lightness = dl;
  }
  const colour = misses.reduce((sum, { share, de }) => sum + share * de, 0) / area;
  return { lightness, colour, advice: taken.length };
}

/** The hand of the task: tubes 15 % off in strength, loads 10 %. */
export const unsteadyHand: Hand = { ...steady, strength: 0.1, tubes: 0.15 };
