export type Three = [number, number, number];

/** Light of a lamp of that temperature, red, green, blue of sRGB primaries, green 1: Planck's law (1901). */
function lampLight(kelvin: number): Three {
  // Colour matching by a fit of bells: Wyman, Sloan, Shirley (2013), J. Comput. Graph. Tech. 2(2), table 1 (one lobe).
  const bell = (w: number, m: number, s1: number, s2: number): number =>
    Math.exp(-0.5 * ((w - m) * (w < m ? s1 : s2)) ** 2);
  let [x, y, z] = [0, 0, 0];
  for (let w = 380; w <= 780; w += 5) {
    const power = 1 / ((w / 560) ** 5 * (Math.exp(1.4388e7 / (w * kelvin)) - 1));
    x +=
      power *
      (0.362 * bell(w, 442, 0.0624, 0.0374) +
        1.056 * bell(w, 599.8, 0.0264, 0.0323) -
        0.065 * bell(w, 501.1, 0.049, 0.0382));
    y += power * (0.821 * bell(w, 568.8, 0.0213, 0.0247) + 0.286 * bell(w, 530.9, 0.0613, 0.0322));
    z += power * (1.217 * bell(w, 437, 0.0845, 0.0278) + 0.681 * bell(w, 459, 0.0385, 0.0725));
  }
  const rgb: Three = [
    3.2406 * x - 1.5372 * y - 0.4986 * z,
    -0.9689 * x + 1.8758 * y + 0.0415 * z,
    0.0557 * x - 0.204 * y + 1.057 * z,
  ];
  return [rgb[0] / rgb[1], 1, Math.max(0.02, rgb[2] / rgb[1])];
}

// Cones of the eye as CIECAM02 takes them: Moroney, N. and others (2002), The CIECAM02 color appearance model.
const toCones = [0.7328, 0.4296, -0.1624, -0.7036, 1.6975, 0.0061, 0.003, 0.0136, 0.9834];
const fromCones = [
  1.096124, -0.278869, 0.182745, 0.454369, 0.473533, 0.072098, -0.009628, -0.005698, 1.015326,
];
const toXyz = [
  0.4124564, 0.3575761, 0.1804375, 0.2126729, 0.7151522, 0.072175, 0.0193339, 0.119192, 0.9503041,
];
const fromXyz = [
  3.2404542, -1.5371385, -0.4985314, -0.969266, 1.8760108, 0.041556, 0.0556434, -0.2040259,
  1.0572252,
];
const times = (m: readonly number[], v: Three): Three =>
  [0, 3, 6].map(
    (r) => (m[r] as number) * v[0] + (m[r + 1] as number) * v[1] + (m[r + 2] as number) * v[2],
  ) as Three;
const conesOf = (rgb: Three): Three => times(toCones, times(toXyz, rgb));

/** The light a colour throws back under another lamp than daylight, cone by cone (von Kries 1902): one matrix. */
export function castOver(kelvin: number): (rgb: Three) => Three {
  const [day, lamp] = [conesOf(lampLight(6504)), conesOf(lampLight(kelvin))];
  const under = (rgb: Three): Three => {
    const cones = conesOf(rgb);
    return times(
      fromXyz,
      times(
        fromCones,
        cones.map((cone, c) => (cone * (lamp[c] as number)) / (day[c] as number)) as Three,
      ),
    );
  };
  const [red, green, blue] = [under([1, 0, 0]), under([0, 1, 0]), under([0, 0, 1])];
  return ([r, g, b]) => [
    r * red[0] + g * green[0] + b * blue[0],
    r * red[1] + g * green[1] + b * blue[1],
    r * red[2] + g * green[2] + b * blue[2],
  ];
}
