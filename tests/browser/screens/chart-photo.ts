import { luminanceOfLightness } from '../../../app/core/colour/lightness.ts';
import { paperSeen, seenOf, type TruePaint } from '../../support/paint/calibration.ts';
import { normals } from '../../support/paint/made-ladder.ts';
import {
  type CameraFaults,
  type Light,
  simulatedCamera,
} from '../../support/paint/simulated-camera.ts';
import { seeded } from '../../support/reading/seeded.ts';

export interface ChartLook {
  readonly camera: CameraFaults;
  /** Standard deviation of ln of the load of a grain: 0.35 granulates strongly. */
  readonly grain: number;
  /** The ladder runs from pale to strong. */
  readonly backward?: boolean;
  readonly seed: number;
}

const width = 1200;
const height = 900;
const grainPx = 4;
/** Loads of a grain are told apart in so many classes of half a standard deviation. */
const classes = 9;

interface Area {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly load: number;
}

/** A ladder of five, and below it step 2 across a line of black ink. */
const areas = (loads: readonly number[], over: number): Area[] => [
  ...loads.map((load, n) => ({ left: 120 + 200 * n, top: 180, width: 150, height: 170, load })),
  { left: 200, top: 520, width: 170, height: 210, load: over },
];
const line = { left: 120, top: 600, width: 330, height: 60 };

const covers = (area: Omit<Area, 'load'>, x: number, y: number): boolean =>
  x >= area.left && x < area.left + area.width && y >= area.top && y < area.top + area.height;

const encoded = (linear: number): number =>
  255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055);

/** A photo of a chart of a paint, loads 15 % off, light falling off by a fifth, JPEG 85. */
export async function chartPhoto(paint: TruePaint, look: ChartLook): Promise<File> {
  const random = seeded(look.seed);
  const normal = normals(random);
  const shot = simulatedCamera(random, look.camera);
  const ladder = [16, 8, 4, 2, 1];
  const loads = (look.backward ? ladder.toReversed() : ladder).map(
    (load) => load * Math.exp(0.15 * normal()),
  );
  const painted = areas(loads, 8 * Math.exp(0.15 * normal()));
  const ink = paperSeen.map(() => luminanceOfLightness(25));
  const bare = shot(paperSeen);
  const inked = shot(ink);
  const lights = painted.map(({ load }) =>
    [paperSeen, ink].map((ground) =>
      Array.from(
        { length: classes },
        (_, c): Light =>
          shot(
            seenOf([paint], [load * Math.exp((look.grain * (c - (classes - 1) / 2)) / 2)], ground),
          ),
      ),
    ),
  );
  const grains = Array.from({ length: (width * height) / grainPx ** 2 }, () =>
    Math.min(classes - 1, Math.max(0, Math.round((classes - 1) / 2 + 2 * normal()))),
  );
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas');
  const image = context.createImageData(width, height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const onLine = covers(line, x, y);
      const area = painted.findIndex((each) => covers(each, x, y));
      const grain =
        grains[Math.floor(y / grainPx) * (width / grainPx) + Math.floor(x / grainPx)] ?? 4;
      const [r, g, b] = lights[area]?.[onLine ? 1 : 0]?.[grain] ?? (onLine ? inked : bare);
      const fall = 1 - 0.2 * (x / width) * (y / height);
      const noise = 2 * normal();
      image.data.set(
        [encoded(fall * r) + noise, encoded(fall * g) + noise, encoded(fall * b) + noise, 255],
        4 * (y * width + x),
      );
    }
  }
  context.putImageData(image, 0, 0);
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
  return new File([blob], 'chart.jpg', { type: 'image/jpeg' });
}
