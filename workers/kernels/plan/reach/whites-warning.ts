import type { Warning } from '../../../../app/model/reading.ts';
import type { Step } from '../../../../app/model/wash-plan.ts';
import { smallWhiteMm, type White } from '../../../../app/model/whites.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { plannedWhites } from '../planned-whites.ts';

/** The point of a brush leaves out nothing smaller, mm (common practice, no source). */
const pointMm = 1;

const larger = 'or take a larger sheet';

/** Whether the first wash of a white's passage goes on wet paper. */
function isWetRound({ slots }: PlanFacts, steps: readonly Step[], { slot }: White): boolean {
  const passage = slots[slot]?.passage;
  const first = steps.find(({ kind, key }) => kind === 'wash' && key.split('/')[1] === passage);
  return first?.technique === 'wet-in-wet';
}

const whites = (count: number): string => (count === 1 ? 'One white' : `${count} whites`);

/** Readings from before whites were listed: the small ones drown in a wet wash that is not masked. */
function unlisted({ reserves }: PlanFacts, steps: readonly Step[]): Warning | null {
  const wet = steps.some(({ kind, technique }) => kind === 'wash' && technique === 'wet-in-wet');
  const masked = steps.some(({ kind }) => kind === 'mask');
  const { smallCount } = reserves;
  if (!wet || masked || smallCount === 0) return null;
  return {
    code: 'whites-too-small',
    text: `${whites(smallCount)} under ${smallWhiteMm} mm would drown in the wet wash: mask ${smallCount === 1 ? 'it' : 'them'}, bring ${smallCount === 1 ? 'it' : 'them'} back with opaque white, ${larger}.`,
  };
}

/** Whites too small for a brush to go round: those it is planned for all the same, else how they are kept. */
export function whitesWarning(facts: PlanFacts, steps: readonly Step[]): Warning | null {
  const by = plannedWhites(facts);
  if (!by) return unlisted(facts, steps);
  const limit = (white: White): number =>
    isWetRound(facts, steps, white) ? smallWhiteMm : pointMm;
  const tooSmall = (list: readonly White[]): number =>
    list.filter((white) => white.shortSideMm < limit(white)).length;
  const [round, masked, last] = [tooSmall(by.round), tooSmall(by.mask), tooSmall(by.last)];
  if (round + masked + last === 0) return null;
  const one = round === 1;
  if (round > 0) {
    const words = one ? 'it would' : 'they would';
    return {
      code: 'whites-too-small',
      text: `${whites(round)} to be painted round ${one ? 'is' : 'are'} too small for a brush on this sheet: ${words} be lost. Mask ${one ? 'it' : 'them'}, bring ${one ? 'it' : 'them'} back with opaque white at the end, ${larger}.`,
    };
  }
  const kept = [
    masked > 0 && `${masked} ${masked === 1 ? 'is' : 'are'} masked`,
    last > 0 && `${last} ${last === 1 ? 'comes' : 'come'} back at the end`,
  ].filter(Boolean);
  const all = masked + last;
  return {
    code: 'whites-too-small',
    text: `${whites(all)} ${all === 1 ? 'is' : 'are'} too small to paint round on this sheet: ${kept.join(', ')}. To paint round ${all === 1 ? 'it' : 'them'} take a larger sheet.`,
  };
}
