import type { PaintShift, StandInTold } from '../../palette/offers/stand-ins.ts';
import { capitalize } from '../numbers.ts';

const depths = { darker: 'darker at full strength', lighter: 'not as dark' } as const;

/** ', a little bluer and not as dark'; empty where neither tells. */
function shiftInWords({ hue, depth }: PaintShift, how: string): string {
  const said = [hue, depth && depths[depth]].filter(Boolean).join(' and ');
  return said ? `, ${how} ${said}` : '';
}

/** How a paint of hers differs from the one it stands in for, a sentence or two. */
export function standInInWords(told: StandInTold): string {
  const name = capitalize(told.theirs);
  if ('lacks' in told) return `${name}: you have no ${told.lacks}, and do without it.`;
  const { yours, near, shift } = told;
  switch (near) {
    case 'same':
      return `${name}: your ${yours} is of the same pigment.`;
    case 'almost':
      return `${name}: your ${yours} looks almost the same.`;
    case 'little':
      return `${name}: your ${yours} stands in${shiftInWords(shift, 'a little')}.`;
    case 'clearly':
      return `${name}: your ${yours} is nearest${shiftInWords(shift, 'clearly')}.`;
    case 'far':
      return `${name}: you have nothing near it. Your ${yours} is nearest${shiftInWords(shift, 'far')}.`;
  }
}
