import type { Warning, WarningCode } from './reading.ts';

/** Warnings about what the plan can't reach. */
const reachCodes: readonly WarningCode[] = [
  'nothing-to-paint',
  'dark-out-of-reach',
  'colour-out-of-reach',
  'shape-out-of-reach',
  'too-many-layers',
  'wash-too-large',
  'whites-too-small',
];

export const isOfReach = ({ code }: Pick<Warning, 'code'>): boolean => reachCodes.includes(code);
