import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import { type Lab, labOfLinear, linearOfLab } from '../../../../../app/core/colour/lab.ts';
import { luminanceOfLightness } from '../../../../../app/core/colour/lightness.ts';
import { defaultPaperLab } from '../../../../../app/core/paint/colour-of-washes.ts';
import {
  curveDoubt,
  type Light,
  labOnPaper,
  toneCurve,
  withCameraFaults,
  withoutCurve,
} from '../../../../../app/core/paint/measure/camera.ts';
import {
  labSeen,
  measuredPaints,
  paperSeen,
  seenOf,
} from '../../../../support/paint/calibration.ts';
import { normals } from '../../../../support/paint/made-ladder.ts';
import { simulatedCamera } from '../../../../support/paint/simulated-camera.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const loads = [1, 4, 16];
const washes = measuredPaints.flatMap((paint) => loads.map((load) => seenOf([paint], [load])));
const mean = (all: readonly number[]): number =>
  all.reduce((sum, one) => sum + one, 0) / all.length;

/** Mean CIEDE2000 of 36 washes over eight cameras, by the curve that is taken back. */
function errorOf(
  faults: { whiteBalance: number; curve: number },
  curveOf: (line: Light, paper: Light) => number,
): number {
  const off = Array.from({ length: 8 }, (_, n) => {
    const random = seeded(n + 1);
    const shot = simulatedCamera(random, { ...faults, saturation: 1 });
    const ink = luminanceOfLightness(24 + 3 * normals(random)());
    const [line, paper] = [shot(paperSeen.map(() => ink)), shot(paperSeen)];
    const curve = curveOf(line, paper);
    return mean(
      washes.map((seen) => colourDifference(labOnPaper(shot(seen), paper, curve), labSeen(seen))),
    );
  });
  return mean(off);
}

describe('a camera', () => {
  it('is taken out so that paper is paper, whatever its light and curve', () => {
    for (const paper of [
      [0.8, 0.7, 0.5],
      [0.4, 0.5, 0.7],
    ] as Light[]) {
      for (const curve of [0, 0.3]) {
        expect(colourDifference(labOnPaper(paper, paper, curve), defaultPaperLab)).toBeLessThan(
          0.2,
        );
      }
    }
  });

  it('without a curve and in white light leaves colours as they are', () => {
    const paper = linearOfLab(defaultPaperLab);
    for (const lab of [
      [40, 60, -14],
      [60, -30, 40],
      [30, 5, -50],
    ] as const) {
      const light = linearOfLab(lab);
      expect(colourDifference(labOnPaper(light, paper, 0), labOfLinear(...light))).toBeLessThan(
        0.2,
      );
    }
  });

  it('with an S-curve is anchored by a black line: nearer than as it is, and than with the usual curve', () => {
    const faults = { whiteBalance: 0.12, curve: 0.35 };
    const asItIs = errorOf(faults, () => 0);
    const usual = errorOf(faults, () => toneCurve(null));
    const anchored = errorOf(faults, (light, paper) => toneCurve({ light, paper }));
    const none = errorOf({ ...faults, curve: 0 }, () => 0);
    console.info(
      `S-curve 0.35: ${asItIs.toFixed(2)} as it is, ${usual.toFixed(2)} usual, ${anchored.toFixed(2)} anchored; no curve ${none.toFixed(2)}`,
    );
    expect(usual).toBeLessThan(asItIs);
    expect(anchored).toBeLessThan(usual - 0.1);
    expect(curveDoubt(true)).toBeLessThan(0.85 * curveDoubt(false));
  });

  it('has a curve that grows, for every strength looked at', () => {
    for (const strength of [-0.3, 0, 0.4, 0.9]) {
      let before = 0;
      for (let light = 0.002; light < 1; light += 0.002) {
        const now = withoutCurve(light, strength);
        expect(now).toBeGreaterThan(before);
        before = now;
      }
    }
  });

  it('is less to be trusted in greenish blue than in yellow', () => {
    const [yellow, blue] = [
      [85, 0, 50],
      [50, -30, -40],
    ] as const;
    const off = (lab: typeof yellow | typeof blue): number =>
      Math.hypot(
        ...withCameraFaults([lab], true).map(([seen]) =>
          colourDifference(seen as typeof yellow, lab),
        ),
      );
    expect(off(blue)).toBeGreaterThan(1.5 * off(yellow));
  });

  it('is doubted in chroma, in hue and in the lightness of colours, each alone', () => {
    // Doubts (own): 9 to 15 % of chroma, 0.06 to 0.16 rad of hue, 1.1 to 3.5 L* at chroma 50; least opposite to greenish blue.
    const angle = ([, a, b]: Lab): number => Math.atan2(b, a);
    const chroma = ([, a, b]: Lab): number => Math.hypot(a, b);
    const at = (degrees: number, c: number): Lab => {
      const hue = (degrees * Math.PI) / 180;
      return [50, c * Math.cos(hue), c * Math.sin(hue)];
    };
    for (const [lab, stronger, turn, lighter] of [
      [at(45, 25), 1.09, 0.06, 1.1 / 2],
      [at(225, 50), 1.15, 0.16, 3.5],
    ] as const) {
      const [, [strengthened], [turned], [lightened]] = withCameraFaults([lab], true) as Lab[][] &
        [Lab[], [Lab], [Lab], [Lab]];
      expect(chroma(strengthened) / chroma(lab)).toBeCloseTo(stronger, 9);
      expect(angle(strengthened)).toBeCloseTo(angle(lab), 9);
      expect(chroma(turned)).toBeCloseTo(chroma(lab), 9);
      expect(angle(turned) - angle(lab)).toBeCloseTo(turn, 9);
      expect(Math.abs(lightened[0] - lab[0])).toBeCloseTo(lighter, 9);
      expect([strengthened[0], turned[0]]).toEqual([50, 50]);
      expect(lightened.slice(1)).toEqual(lab.slice(1));
    }
  });

  it('is trusted as far as simulated cameras are right, in warm and in cool colours', () => {
    const shots = Array.from({ length: 16 }, (_, n) => {
      const random = seeded(500 + n);
      const saturation = 1.05 + 0.07 * normals(random)();
      return simulatedCamera(random, { whiteBalance: 0.12, curve: 0, saturation });
    });
    const square = (one: Lab, other: Lab): number => colourDifference(one, other) ** 2;
    // The line is seen, and no curve there: what is left to doubt are chroma, hue and lightness.
    const share = (some: readonly Float64Array[]): number => {
      const doubted = mean(
        some.flatMap((seen) => {
          const [, ...faults] = withCameraFaults([labSeen(seen)], true);
          const squares = faults.map(([lab]) => square(lab as Lab, labSeen(seen)));
          return squares.reduce((sum, each) => sum + each, 0);
        }),
      );
      const off = mean(
        shots.flatMap((shot) =>
          some.map((seen) => square(labOnPaper(shot(seen), shot(paperSeen), 0), labSeen(seen))),
        ),
      );
      return Math.sqrt(doubted / off);
    };
    const isCool = (seen: Float64Array): boolean =>
      labSeen(seen)[2] < -10 || labSeen(seen)[1] < -10;
    const strong = washes.filter((seen) => Math.hypot(...labSeen(seen).slice(1)) > 20);
    const [warm, cool] = [strong.filter((seen) => !isCool(seen)), strong.filter(isCool)];
    console.info(
      `doubted over found: warm ${share(warm).toFixed(2)}, cool ${share(cool).toFixed(2)}`,
    );
    expect(warm.length).toBeGreaterThan(8);
    expect(cool.length).toBeGreaterThan(6);
    for (const some of [warm, cool]) {
      expect(share(some)).toBeGreaterThan(0.7);
      expect(share(some)).toBeLessThan(1.4);
    }
  });
});
