import { runToEnd } from '../../app/core/numeric/run-to-end.ts';
import { lightnessPlane } from '../../app/core/raster/linear-raster.ts';
import { findEdges } from '../../app/core/reading/edges/measure-edges.ts';
import { type Bench, type BenchSetting, notCompared, percentAlike } from './bench.ts';
import { openCvEdges, openCvMasses } from './open-cv-steps.ts';
import {
  bandBorders,
  bordersAlike,
  leastAreasPx,
  mergedBands,
  readBytes,
  softSigmaPx,
  stagesOf,
} from './read-bytes.ts';

export const needsOpenCv = true;
const k = 5;
const wishes = { bands: k };

async function masses({ photo, openCv }: BenchSetting): Promise<Bench> {
  const stages = await stagesOf(photo, wishes);
  const { raster, sorted } = stages;
  const ours = () => mergedBands(stages);
  const bare = {
    name: 'masses against opencv-js',
    work: `shapes of ${k} bands, ${raster.width} x ${raster.height} px, those too small to paint merged into the neighbour nearest in value until none is left; ours then merges colour families within the bands`,
    ours: { name: 'mergeShapes', run: ours },
  };
  if (!openCv) return { ...bare, agreement: notCompared };
  const leastPx = leastAreasPx(stages);
  const from = sorted.bandMap.map((band) => band - 1);
  const peer = () => {
    const bands = new openCv.Mat(raster.height, raster.width, openCv.CV_8U);
    bands.data.set(from);
    openCvMasses(openCv, bands, leastPx);
    const merged = bands.data.map((band) => band + 1);
    bands.delete();
    return merged;
  };
  return {
    ...bare,
    peer: { name: 'connectedComponentsWithStats a band + merging', run: peer },
    aim: 4,
    agreement: `${percentAlike(ours(), peer())} of pixels in the same band`,
  };
}

async function edges({ photo, openCv }: BenchSetting): Promise<Bench> {
  const { raster, pxPerMm } = await stagesOf(photo, wishes);
  const { slotMap, bandMap, reading } = await readBytes(photo, wishes);
  const ours = () => runToEnd(findEdges(slotMap, lightnessPlane(raster), raster, pxPerMm));
  const bare = {
    name: 'edges against opencv-js',
    work: `contours between the shapes of ${raster.width} x ${raster.height} px and the lightness across them; ours parts colour families too and fits contrast and softness to profiles, the library takes gradients before and after a blur along the contours of the bands`,
    ours: { name: 'lightness plane + edgesOf', run: ours },
  };
  if (!openCv) return { ...bare, agreement: notCompared };
  const { Mat, CV_8U, CV_32F } = openCv;
  const from = bandMap.map((band) => band - 1);
  const plane = lightnessPlane(raster);
  const peer = () => {
    const bands = new Mat(raster.height, raster.width, CV_8U);
    const lightness = new Mat(raster.height, raster.width, CV_32F);
    bands.data.set(from);
    lightness.data32F.set(plane);
    const found = openCvEdges(openCv, bands, lightness, k, softSigmaPx(raster));
    bands.delete();
    lightness.delete();
    return found;
  };
  const borders = bandBorders(ours().borders, reading.slots, pxPerMm);
  return {
    ...bare,
    peer: { name: 'findContours a band + Sobel, twice', run: peer },
    agreement: bordersAlike(borders, peer()),
  };
}

export const benches = async (setting: BenchSetting): Promise<Bench[]> => [
  await masses(setting),
  await edges(setting),
];
