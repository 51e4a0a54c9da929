import { type BrokenRule, broken, type Check, leavesWet } from './broken-rule.ts';

/** R1: masked before any wash, on dry paper. */
export const maskFirst: Check = ({ steps }) => {
  const at = steps.findIndex(({ kind }) => kind === 'mask');
  const mask = steps[at];
  if (!mask) return [];
  const late = steps.slice(0, at).some(({ kind }) => kind === 'wash');
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
