import { differenceCiede2000 } from 'culori/fn';
import { expect, test } from 'vitest';
import table from '../../../../app/core/paint/data/pigment-optics.json';
import { planJson } from '../../../../app/tools/plan/plan-json.ts';
import colorimetry from '../../../fixtures/colorimetry.json';
import { builtPlans, readings } from '../../../support/plan/built-plans.ts';

// How the guide says a colour is got back from a row: nothing of the app but what the command prints and the table.

type Lab = [number, number, number];

interface Row {
  readonly id: string;
  readonly wash: number;
  readonly passage: string;
  readonly family: number;
  readonly parts: readonly { readonly paint: string; readonly parts: number }[];
  readonly load: number;
  readonly paint_ml_per_m2: number;
  readonly concentration: number | null;
  readonly expected: Lab;
  readonly weaker?: Omit<Row, 'weaker'>;
}

interface Printed {
  readonly surface: { readonly k1: number; readonly k2: number };
  readonly palette: readonly {
    readonly id: string;
    readonly strength: number;
    readonly mostLoad: number;
    readonly provenance: string;
    readonly confidence: number;
  }[];
  readonly mixes: readonly Row[];
}

const printed = async (name: string): Promise<Printed> => {
  const plan = await builtPlans[name]?.();
  const reading = readings[name as keyof typeof readings];
  if (!plan) throw new Error(`no plan of ${name}`);
  return JSON.parse(JSON.stringify(planJson(reading, plan, false)));
};

const optics = new Map([...table.pigments, ...table.readyMixed].map((row) => [row.id, row]));

/** Shares of the parts by strength, times the load; over what lies below, inside the surface. */
function laid({ parts, load }: Row, { palette }: Printed, ground: readonly number[]): number[] {
  const amounts = parts.map(({ paint, parts: volume }) => {
    const strength = palette.find(({ id }) => id === paint)?.strength ?? Number.NaN;
    return { spectra: optics.get(paint), loads: volume * strength };
  });
  const all = amounts.reduce((sum, { loads }) => sum + loads, 0);
  return ground.map((under, i) => {
    let [K, S] = [0, 0];
    for (const { spectra, loads } of amounts) {
      K += (loads / all) * (spectra?.K[i] ?? Number.NaN);
      S += (loads / all) * (spectra?.S[i] ?? Number.NaN);
    }
    S = Math.max(S, 1e-9);
    const a = 1 + K / S;
    const b = Math.sqrt(a * a - 1);
    const coth = 1 / Math.tanh(b * S * load);
    return (1 - under * (a - b * coth)) / (a - under + b * coth);
  });
}

/** Lab of a reflectance inside the surface, D65, 2 degrees, 380 to 730 nm by 10. */
function labOf(reflectance: readonly number[], { surface: { k1, k2 } }: Printed): Lab {
  const sums = [0, 0, 0, 0, 0, 0];
  for (const [i, r] of reflectance.entries()) {
    const R = k1 + ((1 - k1) * (1 - k2) * r) / (1 - k2 * r);
    for (const [n, curve] of (['x_5', 'y_5', 'z_5'] as const).entries()) {
      const light = (colorimetry.d65_5[2 * i] ?? 0) * (colorimetry[curve][2 * i] ?? 0);
      sums[n] = (sums[n] ?? 0) + light * R;
      sums[n + 3] = (sums[n + 3] ?? 0) + light;
    }
  }
  const [x = 0, y = 0, z = 0] = [0, 1, 2].map((n) => {
    const t = (sums[n] ?? 0) / (sums[n + 3] ?? 1);
    return t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116;
  });
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const difference = differenceCiede2000();
const apart = (one: Lab, two: Lab): number => {
  const [a, b] = [one, two].map(([l, a, b]) => ({ mode: 'lab65' as const, l, a, b }));
  return a && b ? difference(a, b) : Number.NaN;
};

const paper = ({ surface: { k1, k2 } }: Printed): number[] =>
  table.paper_R.map((R) => (R - k1) / (1 - k1 - k2 + k2 * R));

test.each(['seed heads', 'landscape'])(
  'the colours of %s are got back from the printed rows, wash over wash',
  async (name) => {
    const json = await printed(name);
    const grounds = new Map<string, number[]>();
    let painted = 0;
    for (const row of [...json.mixes].sort((one, two) => one.wash - two.wash)) {
      if (row.parts.length === 0) continue;
      const place = `${row.passage} ${row.family}`;
      const ground = grounds.get(place) ?? paper(json);
      if (row.weaker) {
        const weaker = laid({ ...row, load: row.weaker.load }, json, ground);
        expect(apart(labOf(weaker, json), row.weaker.expected)).toBeLessThan(0.1);
      }
      const after = laid(row, json, ground);
      expect(apart(labOf(after, json), row.expected), row.id).toBeLessThan(0.1);
      grounds.set(place, after);
      painted += 1;
    }
    expect(painted).toBeGreaterThan(2);
  },
);

test('loads are millilitres by strength; a paint is told with what the table says of it', async () => {
  const { mixes, palette } = await printed('seed heads');
  for (const { id, ...paint } of palette) {
    const { strength, mostLoad, provenance, confidence } = optics.get(id) ?? {};
    expect(paint).toMatchObject({ strength, mostLoad, provenance, confidence });
  }
  for (const { parts, ...row } of mixes.filter(({ load }) => load > 0)) {
    const sum = parts.reduce((all, part) => all + part.parts, 0);
    const loads = parts.reduce(
      (all, part) => all + part.parts * (optics.get(part.paint)?.strength ?? 0),
      0,
    );
    for (const each of [row, ...(row.weaker ? [row.weaker] : [])]) {
      expect(each.load).toBeCloseTo((each.paint_ml_per_m2 * loads) / sum, 9);
      expect(each.concentration).toBeGreaterThan(0);
    }
  }
});
