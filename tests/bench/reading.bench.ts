import {
  type Bench,
  type BenchSetting,
  notCompared,
  type PhotoBytes,
  percentAlike,
} from './bench.ts';
import type { OpenCv } from './open-cv.ts';
import {
  openCvBands,
  openCvEdges,
  openCvLightness,
  openCvMasses,
  openCvSmoothing,
} from './open-cv-steps.ts';
import {
  bandBorders,
  bordersAlike,
  leastAreasPx,
  mergedBands,
  type ReadingStages,
  readBytes,
  softSigmaPx,
  stagesOf,
} from './read-bytes.ts';
import { seededPicture } from './seeded-picture.ts';

export const needsOpenCv = true;
const k = 5;
const wishes = { bands: k };

/** The same in the library: from bytes to bands and shapes, as far as wished on to edges. */
function readByOpenCv(cv: OpenCv, photo: PhotoBytes, stages: ReadingStages, withEdges: boolean) {
  const leastPx = leastAreasPx(stages);
  const lightness = openCvLightness(cv, photo);
  const smooth = openCvSmoothing(cv, lightness, Math.max(1, stages.pxPerMm / 2));
  const { bands } = openCvBands(cv, smooth, k);
  openCvMasses(cv, bands, leastPx);
  const edges = withEdges ? openCvEdges(cv, bands, lightness, k, softSigmaPx(photo)) : null;
  const bandMap = bands.data.map((band) => band + 1);
  for (const mat of [lightness, smooth, bands]) mat.delete();
  return { bandMap, edges };
}

const smoothings = '(the smoothings differ)';

/** Two rows: a reading up to its merged shapes, and the whole of it. */
async function compared(
  what: string,
  photo: PhotoBytes,
  openCv: OpenCv | undefined,
): Promise<Bench[]> {
  const size = `${photo.width} x ${photo.height} px`;
  const toShapes = async () => {
    const stages = await stagesOf(photo, wishes);
    const bands = mergedBands(stages);
    stages.handBack();
    return bands;
  };
  const toEdges = () => readBytes(photo, wishes);
  const shapes = {
    name: `reading of ${what} up to its shapes, against opencv-js`,
    work: `${size} from bytes to ${k} bands and merged shapes; ours sorts into colour families as well`,
    ours: { name: 'raster, simplify, sortPixels, mergeShapes', run: toShapes },
  };
  const whole = {
    name: `whole reading of ${what} against opencv-js`,
    work: `${size} from bytes to ${k} bands, shapes and edges; ours finds colour families, whites, the shapes of every wash and runs of hard, soft and lost edges as well`,
    ours: { name: 'raster and readPicture', run: toEdges },
  };
  if (!openCv) return [shapes, whole].map((bare) => ({ ...bare, agreement: notCompared }));
  const stages = await stagesOf(photo, wishes);
  const peer = (withEdges: boolean) => () => readByOpenCv(openCv, photo, stages, withEdges);
  const { bandMap, reading } = await toEdges();
  const theirs = peer(true)();
  const borders = bandBorders(reading.borders, reading.slots, stages.pxPerMm);
  const alike = (map: Uint8Array) =>
    `${percentAlike(map, theirs.bandMap)} of pixels in the same band`;
  return [
    {
      ...shapes,
      peer: { name: 'cvtColor, blur, bilateral 9/30/7, kmeans, components', run: peer(false) },
      aim: 5,
      agreement: `${alike(await toShapes())} ${smoothings}`,
    },
    {
      ...whole,
      peer: { name: 'the same, then contours and gradients', run: peer(true) },
      aim: 5,
      agreement: `${alike(bandMap)}, ${bordersAlike(borders, theirs.edges ?? borders)} ${smoothings}`,
    },
  ];
}

export async function benches({ photo, openCv }: BenchSetting): Promise<Bench[]> {
  const made = seededPicture(photo.width >> 1, photo.height >> 1, 3);
  return [
    ...(await compared('the photograph', photo, openCv)),
    ...(await compared('a made picture', made, openCv)),
  ];
}
