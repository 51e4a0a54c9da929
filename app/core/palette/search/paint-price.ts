import type { Paint } from '../../paint/paint.ts';
import { placeAmongOwned } from '../../paint/paint-box.ts';

/**
 * What a paint of a palette costs, in units of CIEDE2000 over the whole picture: all of it is this project's own.
 * Prices of two paints differ by about what no hand is sure of, 1.0: so they choose among sets that are as good, and
 * alike for two copies of one photo (half of them keep the palette in 30 of 36 copies, these in 34).
 */
const prices = {
  /** Every paint: one well more to keep clean, one colour more to be brought together. */
  each: 0.3,
  /** Opaque paint dulls what lies below it in a glaze. */
  opacity: { T: 0, ST: 0.08, SO: 0.22, O: 0.38 },
  opacityUnknown: 0.15,
  /** A tube of several pigments is nearer to mud with every paint it is mixed with. */
  pigmentMore: 0.15,
  /** A metal or a dust that asks for care at the table. */
  caution: 0.22,
  /** From the paint most boxes hold to the last of the list, and all others: what she may have to buy. */
  seldomOwned: 0.75,
  notListed: 0.9,
  /** Its colour is guessed: her tube may differ from the table by so much (CIEDE2000) that a plan does not hold. */
  unsure: 0.2,
  unsureFrom: 9,
} as const;

/** Places of the list of paints boxes hold most often, from the first to the last. */
const placesListed = 25;

/**
 * What speaks against paints in a mix: opaque ones, tubes of several pigments (or of pigments nobody tells), those to
 * be handled with care. 0 for single transparent pigments without a caution.
 */
export const againstPaints = (paints: readonly Paint[]): number =>
  paints.reduce((sum, { ci, properties: { transparency, caution } }) => {
    const opaque = transparency ? prices.opacity[transparency] : prices.opacityUnknown;
    const more = ci.length > 0 ? ci.length - 1 : 1;
    return sum + opaque + prices.pigmentMore * more + (caution ? prices.caution : 0);
  }, 0);

/** How seldom boxes hold a paint; nothing for her own. */
function seldomOwned({ id, provenance }: Paint): number {
  const place = placeAmongOwned(id);
  if (provenance === undefined) return 0;
  return place < 0 ? prices.notListed : (prices.seldomOwned * place) / placesListed;
}

/**
 * Added to the cost of a set for this paint. `owned`: it lies in a box she has filled, so it is no matter how many
 * others hold it.
 */
export const priceOf = (paint: Paint, owned: boolean): number =>
  prices.each +
  againstPaints([paint]) +
  (owned ? 0 : seldomOwned(paint)) +
  ((paint.confidence ?? 0) >= prices.unsureFrom ? prices.unsure : 0);
