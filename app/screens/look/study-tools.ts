import { pixelsOf, squintLayer } from '../../drawing/light-layers.ts';
import { reducedLight } from '../../drawing/reduced-light.ts';
import { spotColours } from '../../drawing/spot-colours.ts';
import { squintOf } from '../../drawing/squint.ts';
import { liveValuesLayer } from './live-values-layer.ts';
import { RangePictures } from './range-pictures.tsx';
import { SpotCard } from './spot-card.tsx';
import { SpotStage } from './spot-stage.tsx';
import { SquintStrength } from './squint-strength.tsx';
import { ToolRow } from './tool-row.tsx';
import { ValueStrip } from './value-strip.tsx';

/** What the study has beyond its first sight: loaded after it, in a file of its own. */
export const studyTools = {
  RangePictures,
  SpotCard,
  SpotStage,
  SquintStrength,
  ToolRow,
  ValueStrip,
  liveValuesLayer,
  pixelsOf,
  reducedLight,
  spotColours,
  squintLayer,
  squintOf,
};

export type StudyTools = typeof studyTools;
