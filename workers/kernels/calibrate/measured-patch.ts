import type { Lab } from '../../../app/model/lab.ts';
import type { Spectrum } from '../optics/wavelengths.ts';

/** How much of one paint lies in a patch. */
export interface PatchShare {
  /** Place in the list of paints. */
  readonly paint: number;
  /** Load, in the unit the list's K and S are per. */
  readonly amount: number;
  /** How far the amount may be off: standard deviation of its natural logarithm (0.15: 15 %). */
  readonly doubt: number;
}

/** A painted patch: its colour dry (D65, surface floor included), what is in it, what it lies on. */
export interface MeasuredPatch {
  readonly lab: Lab;
  readonly shares: readonly PatchShare[];
  /** Reflectance of the ground, 36 bands, without the surface floor. */
  readonly ground: Spectrum;
}
