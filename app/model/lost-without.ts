/** What a palette does worse without one of its paints. */
export interface PaintLoss {
  /** Munsell values by which the darks end lighter. */
  readonly darksLighter: number;
  /** Mean CIEDE2000 of the painted area that is lost, surcharges for mixed paints included. */
  readonly furtherOff: number;
  readonly families: readonly FamilyLoss[];
}

export interface FamilyLoss {
  /** In painter's words: 'dull green'. */
  readonly name: string;
  /** Of the painted area, 0..1. */
  readonly share: number;
  /** Mean CIEDE2000 lost within the family. */
  readonly furtherOff: number;
}

/** Own figures: a third of a value shows; a family shifts, shifts clearly, is another colour; too small to matter. */
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
  const one = worst.length === 1;
  const who = worst.map(({ name }) => `the ${name}`).join(' and ');
  if (most >= otherColour) return `${who} can't be mixed any more`;
  return `${who} ${one ? 'shifts' : 'shift'}${most >= clearly ? ' clearly' : ''}`;
}

/**
 * What is lost without a paint, in words to follow 'Without it': 'the darks end 1.4 values lighter; the dull
 * green shifts'. Null: it is the only paint.
 */
export function lostWithout(loss: PaintLoss | null): string {
  if (!loss) return 'nothing is left to paint with';
  const dark =
    loss.darksLighter >= leastDark
      ? `the darks end ${loss.darksLighter.toFixed(1)} values lighter`
      : null;
  const said = [dark, familyWords(loss.families)].filter((words) => words !== null);
  if (said.length > 0) return said.join('; ');
  if (loss.furtherOff >= leastOverall) return 'all colours come a little less close';
  return 'little changes: the others nearly do its work';
}
