import type { Technique } from '../../decisions/plan-edit.ts';
import { creamFrom } from '../../paint/consistency.ts';
import { placeOf } from '../../raster/size.ts';
import {
  firstWashIsWet,
  isPlain,
  otherSide,
  outerBorders,
  softShare,
  wayRound,
} from '../../reading/edges/slot-borders.ts';
import type { AreaSaid } from '../../words/plan/names.ts';
import { areaCm2, nameOfFamily, type PlanFacts, paintsIn, type SolvedWash } from '../plan-facts.ts';
import { isTextured } from '../steps/finishing-steps.ts';

/** Some slots of a wash that are painted one way. */
export interface PlannedArea {
  readonly slots: readonly number[];
  readonly technique: Technique;
}

/** How a wash goes on: the way of most of it, and where it is painted in two ways, which first. */
export interface WashWay {
  readonly technique: Technique;
  readonly areas?: readonly PlannedArea[];
}

/**
 * Outer borders softer than this, by length, ask for wet paper also in a later wash: more than in a first
 * one, as it has to be wetted anew and dries for long (own).
 */
const softEnoughLater = 0.58;

/** Over this share of what was painted before, a later thin wash is a glaze (own). */
const glazeShare = 0.6;

/** Paint of these washes lifts easily: it is not wetted again (R16). */
const liftsUnder = (facts: PlanFacts, before: readonly SolvedWash[]): boolean =>
  paintsIn(
    facts,
    before.flatMap((one) => one.mixes),
  ).some((paint) => paint.properties.staining === 0);

/**
 * How the whole of a wash goes on: mostly soft outer borders ask for wet paper. A later wash goes on wetted paper
 * only if nothing under it lifts easily (R16); else it is dry and its edges are softened. A thin one over
 * most of the painted area is a glaze.
 */
function wholeTechnique(
  facts: PlanFacts,
  wash: SolvedWash,
  before: readonly SolvedWash[],
): Technique {
  if (before.length === 0) {
    return firstWashIsWet(facts.reading, wash.slots) ? 'wet-in-wet' : 'wet on dry';
  }
  const soft = softShare(outerBorders(facts.reading, wash.slots));
  if (soft > softEnoughLater && !liftsUnder(facts, before)) return 'wet-in-wet';
  const covered =
    areaCm2(facts, wash.slots) / Math.max(1e-9, areaCm2(facts, before[0]?.slots ?? []));
  const thin = wash.mixes.every((mix) => mix.load < creamFrom);
  return thin && covered > glazeShare ? 'glaze' : 'wet on dry';
}

/** Soft or lost along most of its way round: it was out of focus, or is mist (own). */
const softAllRound = 0.6;
/** A shape of the same colour with so much of its way round beside a smooth one belongs to it (own). */
const besideIt = 0.4;
/** Less of the sheet than this is not worth a technique of its own (own). */
const worthShare = 0.05;
/** Two areas that run into each other more than this, by length, are painted in one go (own). */
const runTogether = 0.58;

/**
 * The painted slots that want wetted paper: soft all round or, in a first wash, one plain shape as a sky or a wall. A
 * later one is graded on dry paper: wetting it anew costs an hour (own).
 */
function smoothSlots(
  { reading, slots }: PlanFacts,
  painted: readonly number[],
  isFirst: boolean,
): Set<number> {
  const { borders, sheet } = reading;
  const sheetMm2 = sheet.widthMm * sheet.heightMm;
  const smooth = new Set(
    painted.filter((i) => {
      if (isFirst && isPlain(borders, slots[i], i, sheetMm2)) return true;
      return !isTextured(slots[i], sheetMm2) && wayRound(borders, i).soft >= softAllRound;
    }),
  );
  for (const i of painted) {
    if (smooth.has(i)) continue;
    const round = wayRound(borders, i);
    const beside = round.borders
      .filter((border) => {
        const other = otherSide(border, i);
        return smooth.has(other) && slots[other].family === slots[i].family;
      })
      .reduce((sum, { lengthMm }) => sum + lengthMm, 0);
    if (round.lengthMm > 0 && beside >= besideIt * round.lengthMm) smooth.add(i);
  }
  return smooth;
}

/** The smooth part of a wash and the rest; null where one of them is too small, or they run into each other. */
function partedBySmoothness(
  facts: PlanFacts,
  painted: readonly number[],
  isFirst: boolean,
): readonly [smooth: number[], rest: number[]] | null {
  const smooth = smoothSlots(facts, painted, isFirst);
  const parts = [
    painted.filter((i) => smooth.has(i)),
    painted.filter((i) => !smooth.has(i)),
  ] as const;
  const shares = parts.map((part) => shareOf(facts, part));
  if (shares.some((share) => share < worthShare)) return null;
  const rest = new Set(parts[1]);
  const between = facts.reading.borders.filter(
    ({ a, b }) => (smooth.has(a) && rest.has(b)) || (smooth.has(b) && rest.has(a)),
  );
  const lengthMm = between.reduce((sum, border) => sum + border.lengthMm, 0);
  const softMm = between.reduce(
    (sum, { lengthMm: mm, soft, lost }) => sum + mm * Math.min(1, soft + lost),
    0,
  );
  return softMm > runTogether * lengthMm ? null : parts;
}

const shareOf = ({ slots }: PlanFacts, indices: readonly number[]): number =>
  indices.reduce((sum, i) => sum + slots[i].share, 0);

/**
 * How a wash goes on after those `before` it. What is smooth, a sky, water, a ground out of focus, goes on wetted
 * paper across its colours, the rest on dry paper (common practice, no source); all of it one way where it is mostly
 * the one or the other.
 */
export function wayOfWash(
  facts: PlanFacts,
  wash: SolvedWash,
  before: readonly SolvedWash[],
): WashWay {
  const technique = wholeTechnique(facts, wash, before);
  const parts = partedBySmoothness(facts, wash.slots, before.length === 0);
  if (!parts || liftsUnder(facts, before)) return { technique };
  const [smooth, rest] = parts;
  // Soft borders of the rest would dry hard.
  if (technique === 'wet-in-wet' && firstWashIsWet(facts.reading, rest)) return { technique };
  const isWet = technique === 'wet-in-wet' || shareOf(facts, smooth) > shareOf(facts, rest);
  const dry = technique === 'wet-in-wet' ? 'wet on dry' : technique;
  return {
    technique: isWet ? 'wet-in-wet' : dry,
    areas: [
      { slots: smooth, technique: 'wet-in-wet' },
      { slots: rest, technique: dry },
    ],
  };
}

/** Another colour over so much of the sheet is worth a word; a shape larger than the other has no place (own). */
const worthWords = { otherColour: 0.01, largest: 0.4 } as const;

/** An area of a wash by its largest colour: 'the blue at the top', with what else is in it; told from the rest. */
export function nameOfArea(
  facts: PlanFacts,
  indices: readonly number[],
  rest: readonly number[],
): AreaSaid {
  const { reading, slots } = facts;
  const [largest] = indices.toSorted((one, two) => slots[two].share - slots[one].share);
  const { family, centre, band, share } = slots[largest];
  const sheetMm2 = reading.sheet.widthMm * reading.sheet.heightMm;
  const hasPlace =
    share < worthWords.largest && isPlain(reading.borders, slots[largest], largest, sheetMm2);
  const others = indices.filter((i) => slots[i].family !== family);
  const alike = rest.filter((i) => slots[i].family === family);
  return {
    say: 'area/colour',
    colour: nameOfFamily(facts, family),
    lightest: band === 1 && shareOf(facts, alike) >= worthWords.otherColour,
    ...(hasPlace && centre && { place: placeOf(centre) }),
    more: shareOf(facts, others) >= worthWords.otherColour,
  };
}
