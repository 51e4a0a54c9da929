import type { Lab } from '../../../app/model/lab.ts';

/** What one strength of one wash is to become: one or more slots' targets, weighted by their area. */
export interface Goal {
  readonly targets: readonly { readonly lab: Lab; readonly weight: number }[];
  /** Area-weighted mean lightness of the targets, L*. */
  readonly lightness: number;
  /** Only a step on the way: no shape of this family is finished by it. */
  readonly guide: boolean;
}

export function goalOf(
  targets: readonly { readonly lab: Lab; readonly weight: number }[],
  guide = false,
): Goal {
  const area = targets.reduce((all, { weight }) => all + weight, 0);
  const lightness = targets.reduce((all, { lab, weight }) => all + lab[0] * weight, 0) / area;
  return { targets, lightness, guide };
}
