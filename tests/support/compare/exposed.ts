import type { DrawnSheet } from './drawn-sheet.ts';
import { castOver, type Three } from './lamp.ts';
import { type CastShadow, random, type Scene } from './scene.ts';

/** What the camera caught, before it is packed. */
export interface Exposed {
  /** Three bytes a pixel. */
  readonly rgb: Uint8Array;
  readonly width: number;
  readonly height: number;
  /** Where the corners of the painting truly are, shares of the photo's sides, clockwise from the upper left. */
  readonly corners: readonly (readonly [number, number])[];
}

const inverseCurve = (f: number): number =>
  f > 6 / 29 ? f * f * f : ((3 * 36) / 841) * (f - 4 / 29);
function linearOf(l: number, a: number, b: number): Three {
  const f = (l + 16) / 116;
  const [x, y, z] = [
    0.95047 * inverseCurve(f + a / 500),
    inverseCurve(f),
    1.08883 * inverseCurve(f - b / 200),
  ];
  return [
    3.2404542 * x - 1.5371385 * y - 0.4985314 * z,
    -0.969266 * x + 1.8760108 * y + 0.041556 * z,
    0.0556434 * x - 0.2040259 * y + 1.0572252 * z,
  ];
}

/** Smooth noise about 0 with deviation near 1: values at whole places, blended between them. */
function grain(seed: number): (x: number, y: number) => number {
  const side = 256;
  const next = random(seed);
  const values = Float32Array.from({ length: side * side }, () => 2 * next() + next() * 2 - 2);
  return (x, y) => {
    const [cx, cy] = [Math.floor(x), Math.floor(y)];
    const [u, v] = [x - cx, y - cy];
    const read = (i: number, j: number): number =>
      values[((cy + j) & 255) * side + ((cx + i) & 255)] as number;
    return (
      (read(0, 0) * (1 - u) + read(1, 0) * u) * (1 - v) +
      (read(0, 1) * (1 - u) + read(1, 1) * u) * v
    );
  };
}

const logistic = (v: number): number => 1 / (1 + Math.exp(-7 * (v - 0.5)));
const [foot, head] = [logistic(0), logistic(1)];
const steep = (v: number): number => (logistic(v) - foot) / (head - foot);

const encode = (linear: number): number =>
  linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;

/** Codes of so many even steps of light: what the camera makes of each. */
const lightSteps = 65536;
function codesOf(curve: number): Uint8Array {
  return Uint8Array.from({ length: lightSteps + 1 }, (_, n) => {
    const v = encode(n / lightSteps);
    // A makers' S: a share of a steep logistic curve (own shape, as makers publish none).
    return Math.round(255 * Math.min(1, Math.max(0, v + curve * (steep(v) - v))));
  });
}

/** The camera before the sheet: from a place of the sheet, mm from its middle, to px of the photo. */
function cameraOver(
  { widthMm, heightMm }: DrawnSheet,
  scene: Scene,
  width: number,
  height: number,
) {
  const rad = Math.PI / 180;
  const [t, r] = [scene.tilt * rad, scene.roll * rad];
  const focal = 0.72 * Math.max(width, height); // about 26 mm on the old small film
  const [ax, ay] = [Math.cos(scene.towards), Math.sin(scene.towards)];
  // Turned about the axis (-ay, ax, 0) by the tilt (Rodrigues 1840), then rolled.
  const [c, s] = [Math.cos(t), Math.sin(t)];
  const turn = [
    [c + ay * ay * (1 - c), -ax * ay * (1 - c)],
    [-ax * ay * (1 - c), c + ax * ax * (1 - c)],
    [-ax * s, -ay * s],
  ] as const;
  const distance = (focal * Math.max(widthMm / width, heightMm / height)) / scene.fill;
  const [cr, sr] = [Math.cos(r), Math.sin(r)];
  const rows = [0, 1].map((k) => [
    cr * turn[0][k as 0 | 1] - sr * turn[1][k as 0 | 1],
    sr * turn[0][k as 0 | 1] + cr * turn[1][k as 0 | 1],
    turn[2][k as 0 | 1],
  ]);
  const [across, down] = rows as [Three, Three];
  return {
    project: (x: number, y: number): [number, number] => {
      const w = across[2] * x + down[2] * y + distance;
      return [
        width / 2 + (focal * (across[0] * x + down[0] * y)) / w,
        height / 2 + (focal * (across[1] * x + down[1] * y)) / w,
      ];
    },
    /** The place of the sheet seen at a px: the two lines of the projection solved. */
    sheetAt: (px: number, py: number): [number, number] => {
      const [u, v] = [(px - width / 2) / focal, (py - height / 2) / focal];
      const a = across[0] - u * across[2];
      const b = down[0] - u * down[2];
      const d = across[1] - v * across[2];
      const e = down[1] - v * down[2];
      const det = a * e - b * d;
      return [
        (u * distance * e - b * v * distance) / det,
        (a * v * distance - u * distance * d) / det,
      ];
    },
  };
}

/** Share of the light a shadow leaves at a place, mm from the sheet's middle. */
function leftIn(shadow: CastShadow | undefined, x: number, y: number): number {
  if (!shadow) return 1;
  const { towards, fromMm, left, rimMm } = shadow;
  const past = (x * Math.cos(towards) + y * Math.sin(towards) - fromMm) / rimMm + 0.5;
  return 1 - (1 - left) * Math.min(1, Math.max(0, past));
}

/** Exposes a sheet, in Node and in a browser alike. */
export function exposed(sheet: DrawnSheet, scene: Scene): Exposed {
  const next = random(scene.seed + 17);
  const upright = sheet.heightMm > sheet.widthMm;
  const width = upright ? Math.round(0.75 * scene.longSidePx) : scene.longSidePx;
  const height = upright ? scene.longSidePx : Math.round(0.75 * scene.longSidePx);
  const camera = cameraOver(sheet, scene, width, height);
  const { widthMm, heightMm, borderMm, tape } = { ...sheet, ...scene };
  const pxPerMm = sheet.width / widthMm;
  const paper = linearOf(95.5, 0.3, 1.7);
  const [rough, fine, grains, wood] = [
    grain(scene.seed + 1),
    grain(scene.seed + 2),
    grain(scene.seed + 3),
    grain(scene.seed + 4),
  ];
  const cast = castOver(scene.kelvin);
  const gain = scene.exposure / Math.max(...cast(paper));
  const [lx, ly] = [Math.cos(scene.lightFrom), Math.sin(scene.lightFrom)];
  const half = Math.abs(lx) * (widthMm / 2 + borderMm) + Math.abs(ly) * (heightMm / 2 + borderMm);
  const planes = [0, 1, 2].map(() => new Float32Array(width * height)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  const places = [
    [0.25, 0.25],
    [0.75, 0.75],
  ] as const;
  for (let py = 0, i = 0; py < height; py++) {
    for (let px = 0; px < width; px++, i++) {
      let [red, green, blue] = [0, 0, 0];
      for (const [ox, oy] of places) {
        const [x, y] = camera.sheetAt(px + ox, py + oy);
        const inX = Math.abs(x) - widthMm / 2;
        const inY = Math.abs(y) - heightMm / 2;
        const out = Math.max(inX, inY);
        let light: Three;
        if (out < 0) {
          const column = Math.min(
            sheet.width - 1,
            Math.max(0, Math.floor((x + widthMm / 2) * pxPerMm)),
          );
          const row = Math.min(
            sheet.height - 1,
            Math.max(0, Math.floor((y + heightMm / 2) * pxPerMm)),
          );
          const j = 3 * (row * sheet.width + column);
          const l = sheet.lab[j] as number;
          const painted = Math.min(1, Math.max(0, (95 - l) / 30));
          const bumps =
            scene.texture * (0.6 * rough(1.1 * x, 1.1 * y) + 0.6 * fine(2.3 * x, 2.3 * y)) +
            scene.granulation * painted * grains(1.7 * x, 1.7 * y);
          light = linearOf(
            Math.min(99, l + bumps),
            sheet.lab[j + 1] as number,
            sheet.lab[j + 2] as number,
          );
        } else if (out < borderMm) {
          const bumps = 1 + 0.02 * scene.texture * rough(1.1 * x, 1.1 * y);
          light = [
            paper[0] * tape * bumps,
            paper[1] * tape * bumps,
            paper[2] * tape * (2 - 1 / tape) * bumps,
          ];
        } else {
          const bumps = 1 + 0.12 * wood(0.03 * x, 0.4 * y) + 0.03 * fine(x, y);
          light = [scene.board[0] * bumps, scene.board[1] * bumps, scene.board[2] * bumps];
        }
        const along = Math.min(1.3, Math.max(-0.3, 0.5 - (x * lx + y * ly) / (2 * half)));
        const off = Math.hypot(px / width - 0.5, py / height - 0.5) / Math.SQRT1_2;
        const bright = (1 - scene.fallOff * along) * (1 - scene.vignette * off * off);
        const shaded = bright * leftIn(scene.shadow, x, y);
        red += light[0] * shaded;
        green += light[1] * shaded;
        blue += light[2] * shaded;
      }
      const seen = cast([(red / 2) * gain, (green / 2) * gain, (blue / 2) * gain]);
      for (const c of [0, 1, 2] as const) planes[c][i] = seen[c];
    }
  }
  const sigma = (scene.blur * Math.max(width, height)) / 2000;
  for (const plane of planes) blurred(plane, width, height, sigma);
  const rgb = new Uint8Array(3 * width * height);
  const codes = codesOf(scene.curve);
  const normal = (): number => next() + next() + next() + next() + next() + next() - 3; // deviation 0.71
  for (let i = 0; i < width * height; i++) {
    for (let c = 0; c < 3; c++) {
      const light = Math.max(0, planes[c as 0][i] as number);
      const noisy = light + 1.41 * normal() * scene.noise * (0.3 + Math.sqrt(light));
      rgb[3 * i + c] = codes[Math.round(lightSteps * Math.min(1, Math.max(0, noisy)))] as number;
    }
  }
  const corners = (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
  ).map(([sx, sy]) => {
    const [px, py] = camera.project((sx * widthMm) / 2, (sy * heightMm) / 2);
    return [px / width, py / height] as const;
  });
  return { rgb, width, height, corners };
}

function blurred(plane: Float32Array, width: number, height: number, sigma: number): void {
  const reach = Math.ceil(3 * sigma);
  const weights = Float32Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-0.5 * ((k - reach) / sigma) ** 2),
  );
  const sum = weights.reduce((all, each) => all + each, 0);
  const line = new Float32Array(Math.max(width, height));
  const pass = (lines: number, length: number, stride: number, step: number): void => {
    for (let n = 0; n < lines; n++) {
      for (let k = 0; k < length; k++) line[k] = plane[n * stride + k * step] as number;
      for (let k = 0; k < length; k++) {
        let all = 0;
        for (let w = -reach; w <= reach; w++)
          all +=
            (weights[w + reach] as number) *
            (line[Math.min(length - 1, Math.max(0, k + w))] as number);
        plane[n * stride + k * step] = all / sum;
      }
    }
  };
  pass(height, width, width, 1);
  pass(width, height, 1, width);
}
