import type { FamilyLoss, PaintLoss } from '../../palette/offers/palette-offer.ts';
import { joinWithOr, joinWords, pluralize } from '../numbers.ts';

/** A third of a value shows; a family shifts, shifts clearly, is another colour; too small to matter (own). */
const leastDark = 0.3;
const shifts = 2;
const clearly = 6;
const otherColour = 12;
const leastShare = 0.03;
const leastOverall = 0.4;

function familyWords(families: readonly FamilyLoss[]): string | null {
  const worst = families
    .filter(({ share, furtherOff }) => furtherOff >= shifts && share >= leastShare)
    .sort((one, two) => two.share * two.furtherOff - one.share * one.furtherOff)
    .slice(0, 2);
  const most = worst.reduce((all, { furtherOff }) => Math.max(all, furtherOff), 0);
  if (worst.length === 0) return null;
  const names = worst.map(({ name }) => `the ${name}`);
  if (most >= otherColour) return `you cannot mix ${joinWithOr(names)}`;
  return `${joinWords(names)} ${pluralize(worst.length, 'is', 'are')} ${most >= clearly ? 'clearly' : 'a bit'} off`;
}

/**
 * What is lost without a paint, in words to follow 'Without it': 'the darks end 1.4 values lighter; the dull
 * green is a bit off'. Null: it is the only paint.
 */
export function describeLoss(loss: PaintLoss | null): string {
  if (!loss) return 'nothing is left to paint with';
  const dark =
    loss.darksLighter >= leastDark
      ? `the darks end ${loss.darksLighter.toFixed(1)} values lighter`
      : null;
  const said = [dark, familyWords(loss.families)].filter((words) => words !== null);
  if (said.length > 0) return said.join('; ');
  if (loss.furtherOff >= leastOverall) return 'all colours are a little less accurate';
  return 'little changes';
}
