import { ColourModel, favourOf } from './colour-model.ts';

/** What each colour bin speaks for, from the cells as they are sorted now (1 subject), by weight. */
export function learnedFavour(
  bins: Int32Array,
  sides: Uint8Array,
  weights: Float32Array,
): Float32Array {
  const subject = new ColourModel();
  const ground = new ColourModel();
  for (let i = 0; i < bins.length; i++) {
    (sides[i] === 1 ? subject : ground).add(bins[i] as number, weights[i] as number);
  }
  return favourOf(subject.finished(), ground.finished());
}
