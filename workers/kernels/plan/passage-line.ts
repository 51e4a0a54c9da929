import type { Reading } from '../../../app/model/reading.ts';

/** The line between ground and subject. */
export interface PassageLine {
  /** On the sheet, mm; without stretches between two whites, where nothing is painted up to it. */
  readonly lengthMm: number;
  /** Share of that length which is lost between two painted shapes, 0..1. */
  readonly lost: number;
}

/** The passages of a sheet with a subject. */
export const parted = ['ground', 'subject'] as const;

export function passageLine({ borders, slots }: Pick<Reading, 'borders' | 'slots'>): PassageLine {
  let all = 0;
  let lost = 0;
  for (const border of borders) {
    const [one, two] = [slots[border.a], slots[border.b]];
    if (!one || !two || one.passage === two.passage || (one.reserve && two.reserve)) continue;
    all += border.lengthMm;
    if (!one.reserve && !two.reserve) lost += border.lengthMm * border.lost;
  }
  return { lengthMm: all, lost: all > 0 ? lost / all : 0 };
}

/** From this share on the line is mostly lost (own figure). */
const mostlyLost = 0.5;

export const isMostlyLost = (reading: Pick<Reading, 'borders' | 'slots'>): boolean =>
  passageLine(reading).lost > mostlyLost;
