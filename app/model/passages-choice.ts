/** Order of ground and subject; together: as one, their line painted across while wet. */
export type PassagesChoice = 'ground first' | 'subject first' | 'together';

export const passagesChoices: readonly PassagesChoice[] = [
  'ground first',
  'subject first',
  'together',
];
