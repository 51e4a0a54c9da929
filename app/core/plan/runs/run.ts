import { numbersFingerprint, textFingerprint } from '../../numeric/hash.ts';
import type { Part } from '../../paint/mix.ts';
import { opticsKey, type Paint } from '../../paint/paint.ts';
import type { ColourSquares } from '../../reading/colour-squares.ts';
import type { ToneRange } from '../../reading/reading.ts';
import type { Slot } from '../../reading/slot.ts';

/** A second puddle that a mix meets wet. */
export interface Meeting {
  readonly parts: readonly Part[];
  /** Its letter; null for a paint by itself. */
  readonly puddle: string | null;
}

/** How a mix runs over its shapes: in every square how much of its own puddle and of a second one lies, ml/m2. */
export interface Run {
  /** Id of the mix; 'weaker' for the bands that take it thinner. */
  readonly mix: string;
  readonly strength: 'full' | 'weaker';
  /** What meets it wet; left out: it runs by strength alone. */
  readonly meets?: Meeting;
  readonly squares: readonly number[];
  readonly own: readonly number[];
  readonly other: readonly number[];
}

/** What washes run over, and with which paints. */
export interface RunInput {
  readonly squares: ColourSquares;
  readonly squareMm: number;
  readonly range: ToneRange;
  readonly slots: readonly Slot[];
  /** Over each other, where most are. */
  readonly washes: number;
  readonly paints: readonly Paint[];
  /** Ids of mixes that she changed: they lie as even as she asked for. */
  readonly even: ReadonlySet<string>;
}

/** Tells the picture and the paints of one input from those of another. */
export function fingerprintOf({
  squares,
  squareMm,
  range,
  slots,
  washes,
  paints,
}: RunInput): string {
  const { across, down, sidePx } = squares;
  return JSON.stringify([
    ...[squares.slots, squares.squares, squares.shares, squares.colours].map(numbersFingerprint),
    ...[across, down, sidePx, squareMm, washes],
    textFingerprint(JSON.stringify([range, slots, paints.map(opticsKey)])),
  ]);
}
