import type { Border, Reading } from '../reading.ts';
import type { Slot } from '../slot.ts';

/** Borders between painted and not painted in one wash. */
export function outerBorders(
  reading: Pick<Reading, 'borders'>,
  slots: readonly number[],
): Border[] {
  const inside = new Set(slots);
  return reading.borders.filter((border) => inside.has(border.a) !== inside.has(border.b));
}

/** Share of their length that is soft, 0..1; lost stretches count on neither side. */
export function softShare(borders: readonly Border[]): number {
  let soft = 0;
  let seen = 0;
  for (const border of borders) {
    soft += border.lengthMm * border.soft;
    seen += border.lengthMm * Math.max(0, 1 - border.lost);
  }
  return seen > 0 ? Math.min(1, soft / seen) : 0;
}

/** A first wash with more of its outer borders soft than this, by length, goes on wet paper (own). */
const softEnough = 0.5;

/** Whether the first wash over these slots, the painted ones of a passage, goes on wet paper. */
export const firstWashIsWet = (
  reading: Pick<Reading, 'borders'>,
  slots: readonly number[],
): boolean => softShare(outerBorders(reading, slots)) > softEnough;

/** One slot's way round: its borders, and what share of their length is soft or lost. */
interface WayRound {
  readonly borders: readonly Border[];
  readonly lengthMm: number;
  readonly soft: number;
}

export const otherSide = ({ a, b }: Border, slot: number): number => (a === slot ? b : a);

export function wayRound(borders: readonly Border[], slot: number): WayRound {
  const own = borders.filter(({ a, b }) => a === slot || b === slot);
  const lengthMm = own.reduce((sum, border) => sum + border.lengthMm, 0);
  const softMm = own.reduce(
    (sum, { soft, lost, ...border }) => sum + border.lengthMm * Math.min(1, soft + lost),
    0,
  );
  return { borders: own, lengthMm, soft: lengthMm > 0 ? softMm / lengthMm : 0 };
}

/** One large shape with a short way round: so much of the sheet, length squared over area (a square has 16; own). */
const plain = { share: 0.05, round: 60 } as const;

/** Whether a slot is mostly one plain shape, as a sky or a wall is; `index` is its own. */
export function isPlain(
  borders: readonly Border[],
  { share, largestMm2 }: Pick<Slot, 'share' | 'largestMm2'>,
  index: number,
  sheetMm2: number,
): boolean {
  if (largestMm2 < plain.share * sheetMm2) return false;
  return wayRound(borders, index).lengthMm ** 2 <= plain.round * share * sheetMm2;
}

/** The line between ground and subject. */
interface PassageLine {
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

/** From this share on the line is mostly lost (own). */
const mostlyLost = 0.5;

export const isMostlyLost = (reading: Pick<Reading, 'borders' | 'slots'>): boolean =>
  passageLine(reading).lost > mostlyLost;
