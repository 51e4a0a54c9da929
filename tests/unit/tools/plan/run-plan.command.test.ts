import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import { type Ran, runCommand, runHere, top } from '../../../support/plan/run-command.ts';

const work = mkdtempSync(join(tmpdir(), 'plan-command-'));
const out = join(work, 'pictures', 'new');
const photo = join(work, 'small.jpg');
const tiny = join(work, 'tiny.jpg');
afterAll(() => rmSync(work, { recursive: true, force: true }));

interface Printed {
  [key: string]: unknown;
  raster: { width: number; height: number };
  sheet: { widthMm: number; heightMm: number };
  lightness: { histogram: number[] };
  bands: { band: number; from: number; to: number; share: number }[];
  families: { id: number; share: number }[];
  palette: { id: string }[];
  mixes: {
    id: string;
    wash: number;
    passage: string;
    family: number;
    parts: { paint: string }[];
    runs: object[];
  }[];
  details: { mix: string; xMm: number; yMm: number }[];
  accents: { mix: string; xMm: number; yMm: number }[];
  edges: { kind: string; count: number; lengthMm: number; share: number }[];
  masses: { firstWash: number; second: number; darks: number };
  puddles: {
    puddle: string;
    wash: number;
    ml: number;
    waterMl: number;
    paints: { paint: string; ml: number; cm: number }[];
    thinned: { mix: string; puddle: number; water: number }[];
  }[];
  reach: { code: string; text: string }[];
  warnings: { code: string }[];
  steps: {
    n: number;
    mixes: string[];
    expectedImage: string | null;
    expectedLightness: { band: number; family: number; passage: string; lightness: number }[];
  }[];
}

/** Named, so that nothing is searched: the search has its own tests, and a run in a process of its own. */
const named = [
  'py74-arylide-yellow',
  'pr122-quinacridone-magenta',
  'pb29-ultramarine-blue',
  'pb27-prussian-blue',
  'pbr7-burnt-sienna',
];
const asked = ['--sheet', '381x279', '--bands', '4', '--paints', named.join(',')];

const keys = (row: object | undefined): string[] => Object.keys(row ?? {}).sort();

describe('a small upright photograph', () => {
  let ran: Ran;
  let plan: Printed;

  beforeAll(async () => {
    await sharp(join(top, 'tests/fixtures/mountain-snow.jpg'))
      .resize(240, 360, { fit: 'cover' })
      .jpeg({ quality: 95 })
      .toFile(photo);
    await sharp(photo).resize(96).toFile(tiny);
    ran = await runHere(photo, ...asked, '--out', out);
    plan = JSON.parse(ran.stdout);
  });

  test('one JSON object on stdout, nothing on stderr', () => {
    expect([ran.code, ran.stderr]).toEqual([0, '']);
    expect(ran.stdout.trim().split('\n')).toHaveLength(1);
  });

  test('the sheet is turned to the photo, the photo cut at its centre to the sheet', () => {
    expect(plan.sheet).toEqual({ widthMm: 279, heightMm: 381 });
    expect(plan.raster).toEqual({ width: 240, height: 328 }); // 240 x 381 / 279
  });

  test('keys as documented', () => {
    expect(keys(plan)).toEqual(
      'accents bands cautions details edges families fit lightness masses mixes palette passages proposedSubject puddles range raster reach record reserves sheet sparkles steps subject subjectBands surface warnings washesWhy'.split(
        ' ',
      ),
    );
    expect(keys(plan.bands[0])).toEqual(
      'band from lightness plannedLightness share to value'.split(' '),
    );
    expect(keys(plan.families[0])).toEqual(['id', 'lab', 'share']);
    expect(keys(plan.palette[0])).toEqual(
      'ci confidence id mostLoad name provenance strength why'.split(' '),
    );
    const mix =
      'concentration consistency expected family id load paint_ml_per_m2 parts passage puddle runs target wash';
    for (const row of plan.mixes) expect(keys(row)).toEqual(expect.arrayContaining(mix.split(' ')));
    for (const row of [...plan.details, ...plan.accents]) {
      expect(keys(row)).toEqual('areaMm2 expected mix paint_ml_per_m2 xMm yMm'.split(' '));
      expect(plan.mixes.map(({ id }) => id)).toContain(row.mix);
      expect(row.xMm > 0 && row.xMm < plan.sheet.widthMm).toBe(true);
      expect(row.yMm > 0 && row.yMm < plan.sheet.heightMm).toBe(true);
    }
    expect(plan.details.length).toBeGreaterThan(5);
    expect(plan.accents.length).toBeGreaterThanOrEqual(3);
    const [run] = plan.mixes.flatMap(({ runs }) => runs);
    expect(keys(run as object)).toEqual('meets sideMm squares weaker'.split(' '));
    expect(keys(plan.surface as object)).toEqual(['k1', 'k2']);
    expect(keys(plan.puddles[0])).toEqual(
      'concentration ml paints puddle text thinned wash waterMl'.split(' '),
    );
    expect(keys(plan.steps[0])).toEqual(
      'areas bands board brush cautions consequence dryMinutes expectedImage expectedLightness families kind mixes n notes paintMinutes paper passage prompt rules shineMinutes soften technique title touches watch'.split(
        ' ',
      ),
    );
    expect(plan.edges.map(({ kind }) => kind)).toEqual(['hard', 'soft', 'found', 'lost']);
    for (const row of plan.edges) expect(keys(row)).toEqual(['count', 'kind', 'lengthMm', 'share']);
    expect(keys(plan.masses)).toEqual(['darks', 'firstWash', 'second']);
    expect(keys(plan.range as object)).toEqual([
      'dark',
      'darkest',
      'hi',
      'knee',
      'lo',
      'mode',
      'paper',
    ]);
  });

  test('numbers hang together', () => {
    const pixels = plan.raster.width * plan.raster.height;
    expect(plan.lightness.histogram).toHaveLength(256);
    expect(plan.lightness.histogram.reduce((sum, count) => sum + count, 0)).toBe(pixels);
    const sum = (rows: readonly { share: number }[]) => rows.reduce((all, r) => all + r.share, 0);
    expect(sum(plan.bands)).toBeCloseTo(1, 6);
    expect(sum(plan.families)).toBeCloseTo(1, 6);
    expect(sum(plan.edges)).toBeCloseTo(1, 6);
    for (const { count, lengthMm } of plan.edges) expect(count > 0).toBe(lengthMm > 0);
    expect(plan.masses.firstWash).toBeGreaterThan(0);
    expect(plan.masses.second).toBeGreaterThan(plan.masses.firstWash);
    const rows = plan.mixes.map((mix) => `${mix.wash} ${mix.passage} ${mix.family}`);
    expect(new Set(rows).size).toBe(rows.length);
    expect(plan.steps.map((step) => step.n)).toEqual(plan.steps.map((_, i) => i + 1));
    const ids = new Set(plan.mixes.map((mix) => mix.id));
    for (const { ml, waterMl, paints, thinned } of plan.puddles) {
      expect(ml).toBeGreaterThan(0);
      expect(paints.reduce((all, paint) => all + paint.ml, waterMl)).toBeCloseTo(ml, 9);
      for (const paint of paints) expect(paint.ml).toBeCloseTo(0.2 * paint.cm, 9);
      for (const { mix } of thinned) expect(ids.has(mix)).toBe(true);
    }
    const [first, last] = [plan.steps[0], plan.steps.at(-1)].map((s) => s?.expectedLightness ?? []);
    expect(last?.length).toBe(first?.length);
    for (const [i, { lightness }] of (last ?? []).entries())
      expect(lightness).toBeLessThanOrEqual((first?.[i]?.lightness ?? 0) + 1e-6);
    for (const each of plan.reach) expect(plan.warnings).toContainEqual(each);
    for (const step of plan.steps) for (const id of step.mixes) expect(ids.has(id)).toBe(true);
  });

  test('pictures of the raster size, bands and families by their numbers', async () => {
    const wanted = 'reference grey bands families edges masses'.split(' ').map((n) => `${n}.png`);
    wanted.push(...plan.steps.map((step) => step.expectedImage as string));
    expect(readdirSync(out).sort()).toEqual([...wanted, 'outline.svg'].sort());
    for (const name of wanted) {
      expect(await sharp(join(out, name)).metadata()).toMatchObject(plan.raster);
    }
    const read = async (name: string) => sharp(join(out, name)).raw().toBuffer();
    const bands = await read('bands.png');
    const families = await read('families.png');
    const pixels = bands.length / 3;
    const shareOf = (bytes: Buffer, code: number): number => {
      let count = 0;
      for (let at = 0; at < bytes.length; at += 3) if (bytes[at] === code) count++;
      return count / pixels;
    };
    const k = plan.bands.length;
    for (const { band, share } of plan.bands) {
      expect(shareOf(bands, Math.round((255 * (k - band)) / (k - 1)))).toBeCloseTo(share, 6);
    }
    const [reference, edges] = [await read('reference.png'), await read('edges.png')];
    const drawn = edges.filter((code, i) => code !== reference[i]).length / edges.length;
    expect(drawn).toBeGreaterThan(0.01); // lines, and the photo still to be seen between them
    expect(drawn).toBeLessThan(0.7);
    const masses = await read('masses.png');
    expect(shareOf(masses, 0)).toBeGreaterThan(0.01);
    for (let at = 0; at < masses.length; at += 3) {
      if (masses[at] !== 0 && (masses[at] as number) < 127) expect.fail('values are not paled');
    }
    for (const { id, share } of plan.families) expect(shareOf(families, id)).toBeCloseTo(share, 6);
  });

  test('the drawing is an SVG file at the size of the sheet', () => {
    const drawing = readFileSync(join(out, 'outline.svg'), 'utf8');
    expect(drawing).toMatch(/^<svg [^>]* width="279mm" height="381mm" viewBox="0 0 279 381">/);
    const across = [...drawing.matchAll(/[ML]([\d.-]+) ([\d.-]+)/g)].map(([, x]) => Number(x));
    expect(across.length).toBeGreaterThan(100);
    expect(Math.min(...across)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...across)).toBeLessThanOrEqual(279);
    expect(Math.max(...across) - Math.min(...across)).toBeGreaterThan(140);
  });

  test('without --out: no pictures are named, and the rest is the same', async () => {
    const bare: Printed = JSON.parse((await runHere(photo, ...asked)).stdout);
    expect(bare.steps.every((step) => step.expectedImage === null)).toBe(true);
    expect({ ...bare, steps: 0 }).toEqual({ ...plan, steps: 0 });
  });

  test('named paints are the palette', () => {
    expect(plan.palette.map((paint) => paint.id).sort()).toEqual([...named].sort());
  });

  test('in a process of its own, with nothing asked for: one JSON object, paints of the box', async () => {
    const free = await runCommand(tiny);
    expect([free.code, free.stderr]).toEqual([0, '']);
    expect(free.stdout.trim().split('\n')).toHaveLength(1);
    const { palette, mixes, steps }: Printed = JSON.parse(free.stdout);
    expect(palette.length).toBeGreaterThan(1);
    expect(palette.length).toBeLessThanOrEqual(5);
    const ids = new Set(palette.map((paint) => paint.id));
    for (const { parts } of mixes) for (const { paint } of parts) expect(ids).toContain(paint);
    expect(steps.length).toBeGreaterThan(0);
  });

  test('paints of a file are the palette, and the mixes are theirs', async () => {
    const file = join(work, 'mine.json');
    const paints = paintBox
      .filter(({ id }) => id === 'pb27-prussian-blue' || id === 'pbr7-burnt-sienna')
      .map(({ id, name, ci, K, S }) => ({ id: `my-${id}`, name: `my ${name}`, ci, K, S }));
    writeFileSync(file, JSON.stringify({ paints }));
    const own = await runHere(tiny, '--paints', file);
    expect([own.code, own.stderr]).toEqual([0, '']);
    const { palette, mixes }: Printed = JSON.parse(own.stdout);
    expect(palette.map(({ id }) => id).sort()).toEqual(paints.map(({ id }) => id).sort());
    const used = new Set(mixes.flatMap(({ parts }) => parts.map(({ paint }) => paint)));
    expect([...used].every((id) => id.startsWith('my-'))).toBe(true);
    expect(used.size).toBeGreaterThan(0);
  });
});
