import { expect, it } from 'vitest';
import { isWhiteOrBlack } from '../../../../app/model/paint.ts';
import { fitPaint } from '../../../../workers/kernels/calibrate/fit-paint.ts';
import { colourDifference } from '../../../../workers/kernels/optics/colour-difference.ts';
import { colourOfWashes } from '../../../../workers/kernels/optics/colour-of-washes.ts';
import { paintBox } from '../../../../workers/kernels/optics/paint-box.ts';
import { seeded } from '../reading/seeded.ts';
import { madeLadder, normals, triedPaints } from './made-ladder.ts';

// A white on white paper shows nothing, so the two whites stay out: fit-paint.test.ts holds their warning.
const paints = paintBox.filter(({ ci }) => !isWhiteOrBlack(ci) || ci[0]?.startsWith('PBk'));

it('ladders of loads 1..16, Lab noise 1.5, loads 15 % off: two-paint mixes within a mean of 4', {}, () => {
  const normal = normals(seeded(33));
  const options = { known: new Map(), tried: triedPaints, isWhite: false };
  const measured = paints.map((paint) => {
    const { K, S } = fitPaint(madeLadder(paint, [1, 2, 4, 8, 16], normal), options);
    return { ...paint, K, S };
  });
  const off: number[] = [];
  for (const [one, paint] of paints.entries()) {
    for (const [two, other] of paints.slice(0, one).entries()) {
      for (const parts of [
        [1, 1],
        [1, 3],
        [3, 1],
      ]) {
        for (const load of [2, 8]) {
          const true_ = colourOfWashes([{ paints: [paint, other], parts, load }]);
          const found = [measured[one], measured[two]] as typeof measured;
          off.push(colourDifference(true_, colourOfWashes([{ paints: found, parts, load }])));
        }
      }
    }
  }
  const mean = off.reduce((all, each) => all + each, 0) / off.length;
  console.info(`Made-up ladders, ${off.length} mixes: mean ${mean.toFixed(2)}`);
  expect(paints.length).toBe(31);
  expect(mean).toBeLessThan(4);
});
