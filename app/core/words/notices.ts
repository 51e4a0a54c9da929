/** Sentences that several screens say. */
export const notOpened = 'This photo could not be opened.';
export const plannedAnew = 'The plan is being worked out anew.';
export const handedOn = 'Handed on.';

/** What keys do on a picture where a pointer would draw. */
export const keyHints = {
  brush: 'By keys: arrows move the brush, Enter dabs.',
  oval: 'By keys: arrows move an oval, + and − size it, comma and full stop make it narrower or wider, Enter lays it down.',
} as const;
