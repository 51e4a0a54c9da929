import { measureCompare, measureShadows } from './compare-measures.ts';
import { measureCorrecting } from './correcting-measures.ts';
import { measureJointFit, measureNamesakes } from './fit-measures.ts';
import { measureHand } from './hand-measures.ts';
import { measureCalibration, measureSureness } from './measuring-measures.ts';
import { measurePaletteStability } from './palette-stability.ts';
import { measurePictures, twelvePaints } from './picture-measures.ts';
import { measurePlans } from './plan-measures.ts';
import { measurePlanStability } from './plan-stability.ts';
import { measureScreens } from './screen-measures.ts';
import { measureSqueezed } from './squeezed-measures.ts';

/** What `npm run measures` measures, in this order; a name after `--` picks those it stands in. */
export const measures: readonly (readonly [name: string, measure: () => Promise<void>])[] = [
  ['plans', measurePlans],
  ['squeezed', measureSqueezed],
  ['hand', measureHand],
  ['palettes', measurePaletteStability],
  ['copies', measurePlanStability],
  ['compare', measureCompare],
  ['shadows', measureShadows],
  ['correcting', measureCorrecting],
  ['pictures', () => measurePictures('test-results/pictures')],
  ['twelve', () => measurePictures('test-results/pictures-twelve', twelvePaints)],
  ['namesakes', measureNamesakes],
  ['fit', measureJointFit],
  ['calibration', measureCalibration],
  ['sureness', measureSureness],
  ['words', measureScreens],
];
