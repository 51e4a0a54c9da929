import type { Warning } from './reading.ts';

const shakyWarning: Warning = {
  code: 'untrue-pixels',
  text: 'This browser changes the colours of pictures a little as they are read: take values near a limit with care, or use another browser.',
};

const damagedWarning: Warning = {
  code: 'part-missing',
  text: 'Part of this photo is missing: the file is damaged, and grey or wrong colours stand in for it. Copy the photo again from where it came, or crop that part away.',
};

/** A smaller part of the photo was never cut by her: the sheet's shape is far from the photo's (own). */
const smallPart = 0.05;

function smallPartWarning(share: number): Warning {
  const percent = share < 0.01 ? 'less than 1' : `only ${Math.round(share * 100)}`;
  return {
    code: 'small-picture',
    text: `Of this photo ${percent} % is on your sheet: their shapes are far apart. Choose a longer sheet, or the part that matters, under Sheet.`,
  };
}

interface PhotoFacts {
  /** Part of it is missing in its file. */
  readonly damaged: boolean;
  /** Its pixels were changed a little on the way. */
  readonly shaky: boolean;
  /** Share of its area that is on the sheet. */
  readonly share: number;
}

/** What is worth telling of the photo itself, before what the picture shows. */
export const photoWarnings = ({ damaged, shaky, share }: PhotoFacts): Warning[] => [
  ...(damaged ? [damagedWarning] : []),
  ...(shaky ? [shakyWarning] : []),
  ...(share < smallPart ? [smallPartWarning(share)] : []),
];
