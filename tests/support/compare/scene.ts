/** How a sheet is photographed. All of it is the tests' own; nothing is taken from the code under test. */
export interface Scene {
  readonly seed: number;
  /** Long side of the photo, px. */
  readonly longSidePx: number;
  /** Angle between camera and the sheet's normal, degrees, and the side it leans to, radians; roll in degrees. */
  readonly tilt: number;
  readonly towards: number;
  readonly roll: number;
  /** Share of the photo's long side that the sheet about fills. */
  readonly fill: number;
  /** Sigma of the lens, px of a photo of 2000 px. */
  readonly blur: number;
  /** Noise of the sensor, as shares of full light: a floor, and what grows with the root of the light. */
  readonly noise: number;
  /** Share of the light lost from one side to the other, its direction, and in the corners. */
  readonly fallOff: number;
  readonly lightFrom: number;
  readonly vignette: number;
  readonly kelvin: number;
  /** Strength of the camera's S-curve, 0 to about 0.4. */
  readonly curve: number;
  readonly quality: number;
  /** Linear light the board throws back, red, green, blue. */
  readonly board: readonly [number, number, number];
  /** Bare or taped paper round the painting, mm; its reflectance beside the paper's. */
  readonly borderMm: number;
  readonly tape: number;
  /** Roughness of the paper and of the paint in its valleys, L*. */
  readonly texture: number;
  readonly granulation: number;
  /** Light of bare paper where it is brightest, 0..1. */
  readonly exposure: number;
  /** A shadow over part of the sheet; left out: none. */
  readonly shadow?: CastShadow;
}

/** Something before the light: what lies on one side of a line has less of it, over a soft rim. */
export interface CastShadow {
  /** Direction of the dark side, radians, and the line's distance from the sheet's middle that way, mm. */
  readonly towards: number;
  readonly fromMm: number;
  /** Share of the light that is left. */
  readonly left: number;
  /** Width of its rim, mm. */
  readonly rimMm: number;
}

export function random(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0 || 1;
  // xorshift32: Marsaglia, G. (2003), Xorshift RNGs, J. Stat. Softw. 8(14).
  return () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 4294967296;
  };
}

/** A scene drawn by chance within what the measures promise. */
export function anyScene(seed: number, longSidePx = 2000): Scene {
  const next = random(1000 + seed);
  for (let n = 0; n < 5; n++) next();
  const boards: readonly Scene['board'][] = [
    [0.35, 0.24, 0.14],
    [0.5, 0.4, 0.28],
    [0.06, 0.05, 0.045],
    [0.2, 0.2, 0.2],
    [0.12, 0.16, 0.13],
    [0.62, 0.58, 0.5],
  ];
  return {
    seed,
    longSidePx,
    tilt: 25 * next(),
    towards: 2 * Math.PI * next(),
    roll: 12 * next() - 6,
    fill: 0.6 + 0.25 * next(),
    blur: 0.6 + 1.0 * next(),
    noise: 0.004 + 0.01 * next(),
    fallOff: 0.3 * next(),
    lightFrom: 2 * Math.PI * next(),
    vignette: 0.12 * next(),
    kelvin: 2700 + 5300 * next(),
    curve: 0.35 * next(),
    quality: Math.round(75 + 18 * next()),
    board: boards[Math.floor(boards.length * next())] as Scene['board'],
    borderMm: next() < 0.25 ? 0 : 4 + 10 * next(),
    tape: next() < 0.7 ? 1 : 0.86 + 0.1 * next(),
    texture: 0.5 + 1.2 * next(),
    granulation: 2.5 * next(),
    exposure: 0.6 + 0.3 * next(),
  };
}
