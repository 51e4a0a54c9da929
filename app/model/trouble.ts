/** What may go wrong on a sheet, in the order it is offered. */
export const troubles = [
  'backrun',
  'hard edge',
  'lost white',
  'too pale',
  'too dark',
  'muddy',
  'mask tore',
  'drying too fast',
] as const;

export type Trouble = (typeof troubles)[number];

export const troubleWords: Record<Trouble, string> = {
  backrun: 'A bloom ran back',
  'hard edge': 'A hard edge dried in',
  'lost white': 'A white is gone',
  'too pale': 'Too pale',
  'too dark': 'Too dark',
  muddy: 'It turns to mud',
  'mask tore': 'The mask tore the paper',
  'drying too fast': 'It dries too fast',
};
