import type { Mix } from '../../../app/model/wash-plan.ts';
import { labOfReflectance } from '../optics/lab-of-reflectance.ts';
import { surfaceFloor } from '../optics/surface.ts';
import { labOfGround } from './ground.ts';
import type { LaidRow } from './lay-steps.ts';

/** Rows with the colour they dry to where they really come to lie; those no step lays stay as solved. */
export function rowsAsLaid(mixes: readonly Mix[], rows: ReadonlyMap<string, LaidRow>): Mix[] {
  return mixes.map((mix) => {
    const laid = rows.get(mix.id);
    if (!laid) return mix;
    const { full, weak } = laid;
    return {
      ...mix,
      ...(full && {
        expected: labOfGround(full),
        expectedWet: labOfReflectance(full.reflectance, surfaceFloor.wet),
      }),
      ...(mix.weaker && weak && { weaker: { ...mix.weaker, expected: labOfGround(weak) } }),
    };
  });
}
