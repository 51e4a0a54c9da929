import type { Paint } from '../../../app/model/paint.ts';
import type { PaletteOffer, PaletteOffers } from '../../../app/model/palette-offer.ts';
import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import type { Reading } from '../../../app/model/reading.ts';
import type { PlanCheckpoint } from '../plan/plan-checkpoint.ts';
import { type PlannedSlots, plannedSlots } from '../plan/planned-slots.ts';
import { darkRemedy } from './dark-remedy.ts';
import { isDifferent } from './is-different.ts';
import { type JudgedOffer, judgeOffer, type OfferPlace } from './judge-offer.ts';
import { openSearch, paintsOf } from './open-search.ts';
import { darkestBandLightness, paletteTargets } from './palette-target.ts';
import { preferredTies } from './preferred-ties.ts';
import { isMore, type SearchedCharacter, setOfCharacter } from './set-of-character.ts';

/** Near ties looked at wash over wash; palettes offered beside hers; what one of them may cost more. */
const mostTies = 4;
const mostOthers = 3;
const costsMore = 1;

/** A near tie is offered where wash over wash it is so much better, CIEDE2000. */
const betterBy = 0.1;

const characters: readonly SearchedCharacter[] = ['fewest', 'cleanest', 'granulating'];

/** Palettes solved in all, for the progress. */
const mostSolved = 1 + mostTies + mostOthers;

const samePaints = (one: readonly Paint[], two: readonly Paint[]): boolean =>
  one.length === two.length && one.every((paint) => two.includes(paint));

interface Offering {
  readonly reading: Reading;
  readonly planned: PlannedSlots;
  readonly wantedDark: number;
  readonly judge: (place: OfferPlace, paints: readonly Paint[]) => Promise<JudgedOffer>;
  readonly checkpoint: PlanCheckpoint;
}

interface Found {
  readonly current: JudgedOffer;
  readonly others: readonly PaletteOffer[];
}

/** Her own choice: nothing is searched. */
async function judgeChosen(offering: Offering): Promise<JudgedOffer> {
  const { reading, planned, wantedDark, judge, checkpoint } = offering;
  const search = await openSearch(planned.wide.slots, planned.known, planned.wishes, (part) =>
    checkpoint(0.1 + 0.1 * part, 'paints'),
  );
  return judge({ reading, planned, search, wantedDark }, search.paints);
}

/** Palettes found freely; the first is that of the plan where she has `chosen` none. */
async function findOthers(
  { reading, planned, wantedDark, judge, checkpoint }: Offering,
  chosen: JudgedOffer | null,
): Promise<Found> {
  const { chosen: _, ...wishes } = planned.wishes;
  const free = { ...planned, wishes };
  const search = await openSearch(planned.wide.slots, planned.known, wishes, (part) =>
    checkpoint(0.1 + 0.3 * part, 'paints'),
  );
  const place = { reading, planned: free, search, wantedDark };
  const walked = (part: number) => checkpoint(0.4 + 0.1 * part, 'paints');
  const ties: JudgedOffer[] = [];
  for (const set of preferredTies(search).slice(0, mostTies)) {
    ties.push(await judge(place, paintsOf(search, set)));
  }
  const current = chosen ?? (ties[0] as JudgedOffer);
  const nearest = ties.reduce((best, tie) => (tie.rating < best.rating ? tie : best));
  const worthIt = chosen !== null || nearest.rating < current.rating - betterBy;
  const offers = worthIt && !samePaints(nearest.paints, current.paints) ? [nearest] : [];
  const others = offers.map((each) => each.offered('nearest'));
  const base = (chosen ? nearest : current).paints;
  const seen = [base, current.paints, ...offers.map(({ paints }) => paints)];
  for (const character of characters) {
    if (others.length === mostOthers) break;
    const atMost = (search.ties[0]?.cost ?? 0) + costsMore;
    const set = await setOfCharacter(character, seen, atMost, search, walked);
    if (!set) continue;
    // Once solved it may turn out that some paint is not needed.
    const judged = await judge(place, paintsOf(search, set));
    const differs = seen.every((one) => isDifferent(judged.paints, one));
    if (!differs || !isMore(character, judged.paints, base)) continue;
    others.push(judged.offered(character));
    seen.push(judged.paints);
  }
  return { current, others };
}

/**
 * The palette of the plan for the same reading and wishes, judged wash over wash, and up to three others: one
 * as good that comes out better once wash lies over wash, and palettes that cost at most 1 more and have fewer
 * paints, less against them, or more granulation. Each differs from every other by two paints or is smaller.
 * Deterministic. Null where there is nothing to paint. Throws as `buildWashPlan`.
 */
export async function paletteOffers(
  reading: Reading,
  asked: PlanWishes,
  checkpoint: PlanCheckpoint,
): Promise<PaletteOffers | null> {
  const planned = await plannedSlots(reading, asked, checkpoint);
  if (paletteTargets(planned.wide.slots).length === 0) return null;
  let solved = 0;
  const offering: Offering = {
    reading,
    planned,
    wantedDark: darkestBandLightness(paletteTargets(reading.slots)),
    async judge(place, paints) {
      const from = 0.5 + (0.4 * solved) / mostSolved;
      solved += 1;
      return judgeOffer(place, paints, (part, stage) =>
        checkpoint(from + ((2 * part - 1) * 0.4) / mostSolved, stage),
      );
    },
    checkpoint,
  };
  const { wishes, known } = planned;
  const chosen = wishes.chosen?.length ? await judgeChosen(offering) : null;
  const { current, others } =
    chosen && wishes.colours?.mode === 'one'
      ? { current: chosen, others: [] }
      : await findOthers(offering, chosen);
  const { paints, reached } = current;
  const { wantedDark } = offering;
  const remedy = await darkRemedy(paints, reached, wantedDark, known, wishes.box, (part) =>
    checkpoint(0.9 + 0.1 * part, 'paints'),
  );
  return { current: current.offered(chosen ? 'chosen' : 'nearest'), others, remedy };
}
