import { seededRandom } from '../bench/seeded-random.ts';
import {
  type Comparing,
  paintedComparing,
  unsteadyHand,
} from '../support/compare/correcting-painter.ts';
import { comparedPictures } from './compare-cases.ts';

const sheets = 40;
/** How exactly a shape is measured in a photo, L*: what `compare` finds. */
const noise = 1;

const quantile = (list: readonly number[], share: number): number =>
  list.toSorted((one, two) => one - two)[Math.floor(share * (list.length - 1))] ?? 0;

/**
 * Sheets by tubes 15 % off in strength and a hand 10 % off in load, never compared, compared after the first wash, and
 * after every one, all advice taken: how far the last sheet is from its plan.
 */
export async function measureCorrecting(): Promise<void> {
  const pictures = await comparedPictures();
  for (const comparing of ['never', 'first', 'every'] as const satisfies readonly Comparing[]) {
    const found = pictures.flatMap(({ plan, reading }, n) =>
      Array.from({ length: sheets }, (_, seed) =>
        paintedComparing(
          plan,
          reading,
          comparing,
          { hand: unsteadyHand, noise },
          seededRandom(1000 * n + seed),
        ),
      ),
    );
    const lightness = found.map((each) => each.lightness);
    const colour = found.map((each) => each.colour);
    const advice = found.reduce((sum, each) => sum + each.advice, 0) / found.length;
    console.log(
      `compared ${comparing}: median |dL*| ${quantile(lightness, 0.5).toFixed(2)} (90 % of sheets under ${quantile(lightness, 0.9).toFixed(2)}), CIEDE2000 median ${quantile(colour, 0.5).toFixed(2)} (90 % under ${quantile(colour, 0.9).toFixed(2)}), ${advice.toFixed(1)} pieces of advice a sheet`,
    );
  }
}
