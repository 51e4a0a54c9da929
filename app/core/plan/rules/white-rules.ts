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
    ...(late ? [broken('R1', mask, 'masked after a wash', { say: 'mask/late' })] : []),
    ...(mask.paper !== 'bone dry'
      ? [broken('R1', mask, 'masked on wet paper', { say: 'mask/on-wet' })]
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
    found.push(broken('R12', mask, 'masked and not unmasked', { say: 'mask/stays' }));
  }
  if (!unmask) return found;
  if (on < 0 || on > off) {
    found.push(broken('R12', unmask, 'unmasked and not masked', { say: 'mask/none' }));
  }
  const before = steps.slice(0, off);
  const lastDry = before.findLastIndex(({ kind }) => kind === 'dry');
  if (before.findLastIndex(leavesWet) > lastDry) {
    found.push(broken('R12', unmask, 'unmasked before the drying check', { say: 'mask/off-damp' }));
  }
  if (steps.slice(off).some(({ kind }) => kind === 'wash')) {
    found.push(broken('R12', unmask, 'a wash comes after', { say: 'mask/wash-after' }));
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
    return [broken('white', step, `${lost} painted in ${step.key}`, { say: 'white/lost' })];
  });

/** R1: on wet paper small whites want masking. */
export const smallWhitesInWet: Check = (plan, { smallWhites }) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    const count = smallWhites?.get(passageOf(step)) ?? 0;
    if (step.technique !== 'wet-in-wet' || count < manySmallWhites) return [];
    return [
      broken('R1', step, `${count} small whites in ${step.key}`, {
        say: 'white/small-in-wet',
        count,
      }),
    ];
  });
