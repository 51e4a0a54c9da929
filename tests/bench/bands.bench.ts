import { ckmeans } from 'simple-statistics';
import { lightnessPlane } from '../../app/core/raster/linear-raster.ts';
import { bandMapOf, chooseRange, tonesPresent } from '../../app/core/reading/sort-pixels.ts';
import { chooseLimits } from '../../app/core/reading/values/choose-limits.ts';
import { binOf, binsOf, countBins } from '../../app/core/reading/values/list-bands.ts';
import { type Bench, type BenchSetting, notCompared } from './bench.ts';
import { openCvBands } from './open-cv-steps.ts';
import { type ReadingStages, stagesOf } from './read-bytes.ts';
import { seededPicture } from './seeded-picture.ts';

export const needsOpenCv = true;
const k = 5;
const wishes = { bands: k };

/** The limits as a reading chooses them from its simplified lightness. */
function limitsOf({ planes, darkest, paper }: ReadingStages, tones: number): readonly number[] {
  const histogram = countBins(binsOf(planes.lightness));
  const range = chooseRange(histogram, darkest, paper);
  return chooseLimits(histogram, tones, range, wishes).limits;
}

/** Sum of squared distances, in L*, of values to the mean of their group. */
function costOf(groups: readonly (readonly number[])[]): number {
  let cost = 0;
  for (const group of groups) {
    const mean = group.reduce((sum, value) => sum + value, 0) / group.length;
    for (const value of group) cost += (value - mean) ** 2;
  }
  return cost;
}

/** The values of a plane by the bands these limits make of them. */
function grouped(
  plane: Float32Array,
  limits: readonly number[],
  numberOf: (lightness: number) => number,
): number[][] {
  const groups: number[][] = Array.from({ length: limits.length + 1 }, () => []);
  for (const [i, band] of bandMapOf(binsOf(plane), limits).entries()) {
    groups[band - 1]?.push(numberOf(plane[i] as number));
  }
  return groups;
}

const own = 'histogram, range and limits; exact over 256 steps, of 1 to 7 bands at once';

async function againstGroups(): Promise<Bench> {
  const picture = seededPicture(320, 240, 2);
  const stages = await stagesOf(picture, wishes);
  const { lightness } = stages.planes;
  const tones = tonesPresent(countBins(binsOf(lightnessPlane(stages.raster))));
  const ours = () => limitsOf(stages, tones);
  const bins = Array.from(lightness, binOf);
  const peer = () => ckmeans(bins, k);
  const ratio = costOf(grouped(lightness, ours(), binOf)) / costOf(peer());
  return {
    name: 'band limits against ckmeans',
    work: `best partition into ${k} bands of 320 x 240 simplified lightnesses of a made picture; the library groups the values themselves`,
    ours: { name: own, run: ours },
    peer: { name: 'simple-statistics ckmeans', run: peer },
    agreement: `cost ${((ratio - 1) * 100).toFixed(6)} % over the library's`,
  };
}

async function againstOpenCv({ photo, openCv }: BenchSetting): Promise<Bench> {
  const stages = await stagesOf(photo, wishes);
  const { lightness } = stages.planes;
  const tones = tonesPresent(countBins(binsOf(lightnessPlane(stages.raster))));
  const ours = () => limitsOf(stages, tones);
  const bare = {
    name: 'band limits against opencv-js',
    work: `${k} bands of ${photo.width} x ${photo.height} simplified lightnesses of the photograph; k-means takes the best of three starts of at most ten rounds`,
    ours: { name: own, run: ours },
  };
  if (!openCv) return { ...bare, agreement: notCompared };
  const mat = new openCv.Mat(stages.raster.height, stages.raster.width, openCv.CV_32F);
  mat.data32F.set(lightness);
  const peer = () => {
    const { bands, cost } = openCvBands(openCv, mat, k);
    bands.delete();
    return cost;
  };
  const ratio = costOf(grouped(lightness, ours(), (value) => value)) / peer();
  return {
    ...bare,
    peer: { name: 'kmeans', run: peer },
    aim: 100,
    agreement: `our cost is ${ratio.toFixed(4)} of the library's`,
  };
}

export const benches = async (setting: BenchSetting): Promise<Bench[]> => [
  await againstGroups(),
  await againstOpenCv(setting),
];
