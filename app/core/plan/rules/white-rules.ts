import { manySmallWhites } from '../../limits.ts';
import { leavesWet } from '../plan.ts';
import { type BrokenRule, broken, type Check, passageOf, washesOf } from './broken-rule.ts';

/** R1: masked before any wash, on dry paper. */
export const maskFirst: Check = ({ steps }) => {
  const index = steps.findIndex(({ kind }) => kind === 'mask');
  const mask = steps[index];
  if (!mask) return [];
  const late = steps.slice(0, index).some(({ kind }) => kind === 'wash');
  return [
    ...(late
      ? [
          broken(
            'R1',
            mask,
            'masked after a wash',
            'A wash has gone over these whites already: masking comes too late to keep them.',
          ),
        ]
      : []),
    ...(mask.paper !== 'bone dry'
      ? [
          broken(
            'R1',
            mask,
            'masked on wet paper',
            'On wet paper the masking fluid soaks in and tears the sheet when it comes off.',
          ),
        ]
      : []),
  ];
};

/** R12: the mask comes off a dry sheet when no wash is to come. */
export const maskOff: Check = ({ steps }) => {
  const on = steps.findIndex(({ kind }) => kind === 'mask');
  const off = steps.findIndex(({ kind }) => kind === 'unmask');
  const mask = steps[on];
  const unmask = steps[off];
  const found: BrokenRule[] = [];
  if (mask && !unmask) {
    found.push(
      broken(
        'R12',
        mask,
        'masked and not unmasked',
        'The mask stays on: the longer it does, the more it clings, and it can tear the paper.',
      ),
    );
  }
  if (!unmask) return found;
  if (on < 0 || on > off) {
    found.push(
      broken(
        'R12',
        unmask,
        'unmasked and not masked',
        'Nothing is masked by then: there is no mask to take off, and whites not painted round are lost.',
      ),
    );
  }
  const before = steps.slice(0, off);
  const lastDry = before.findLastIndex(({ kind }) => kind === 'dry');
  if (before.findLastIndex(leavesWet) > lastDry) {
    found.push(
      broken(
        'R12',
        unmask,
        'unmasked before the drying check',
        'Rubbed off a damp sheet the mask tears the paper and smears the paint into the whites.',
      ),
    );
  }
  if (steps.slice(off).some(({ kind }) => kind === 'wash')) {
    found.push(
      broken(
        'R12',
        unmask,
        'a wash comes after',
        'A wash still comes: it floods these whites unless you paint round every one.',
      ),
    );
  }
  return found;
};

/** Whites are the paper throughout. */
export const whitesStay: Check = ({ steps, slots, paper }) =>
  steps.flatMap((step, n): BrokenRule[] => {
    const before = steps[n - 1]?.after;
    const lost = slots.findIndex(
      ({ reserve }, i) =>
        reserve &&
        step.after[i]?.[0] !== paper[0] &&
        (before === undefined || before[i]?.[0] === paper[0]),
    );
    if (lost < 0) return [];
    return [
      broken(
        'white',
        step,
        `${lost} painted in ${step.key}`,
        'Paint goes over a white here: that white is lost.',
      ),
    ];
  });

/** R1: on wet paper small whites want masking. */
export const smallWhitesInWet: Check = (plan, { smallWhites }) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    const count = smallWhites?.get(passageOf(step)) ?? 0;
    if (step.technique !== 'wet-in-wet' || count < manySmallWhites) return [];
    return [
      broken(
        'R1',
        step,
        `${count} small whites in ${step.key}`,
        `On wet paper the paint runs into the ${count} small whites: mask them first, or bring them back at the end.`,
      ),
    ];
  });
