import type { Pictures, SubjectResult } from '../../../workers/analysis-api.ts';
import { bitmapLayer, type Layer, whereLayer } from '../../drawing/layers.ts';

/** L* 56 as an sRGB code: the surround, so that the ground falls back into the wall. */
export const dimTo = 134;

/** The reference in colour and in grey; once there is a subject, also with its ground dimmed. */
export function subjectLayers(
  { reference, grey }: Pictures,
  found: SubjectResult | null,
): Record<string, Layer> {
  const colour = bitmapLayer(reference);
  const inGrey = bitmapLayer(grey);
  if (!found) return { colour, grey: inGrey };
  const alone = (under: Layer): Layer => whereLayer(under, found.mask, new Set([1]), dimTo);
  return { colour, grey: inGrey, 'colour-alone': alone(colour), 'grey-alone': alone(inGrey) };
}
