import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sourceFiles, top } from './source-files.ts';
import { unsourcedFigures } from './unsourced-figures.ts';

const attributed = readFileSync(join(top, 'tests/fixtures/ATTRIBUTION.md'), 'utf8');

/**
 * Where figures need no source, and why; paths from tests/ on, folders with a slash at the end. What is left out here
 * and holds its subject to figures says in words where they come from.
 */
const exempt: Readonly<Record<string, readonly string[]>> = {
  'shapes, pictures and rows of numbers made in the test: what comes out follows from how they were made':
    [
      'unit/core/compare/homography.test.ts',
      'unit/core/decisions/',
      'unit/core/numeric/',
      'unit/core/outline/outline-shapes.test.ts',
      'unit/core/outline/outline.test.ts',
      'unit/core/raster/',
      'unit/core/reading/alter/',
      'unit/core/reading/colour-squares.test.ts',
      'unit/core/reading/edges/contrast-away.test.ts',
      'unit/core/reading/edges/edge-profile.test.ts',
      'unit/core/reading/edges/measure-edges.borders.test.ts',
      'unit/core/reading/edges/measure-edges.pauses.test.ts',
      'unit/core/reading/edges/place-on-edge.test.ts',
      'unit/core/reading/edges/slot-borders.test.ts',
      'unit/core/reading/edges/soft-blend.shapes.test.ts',
      'unit/core/reading/edges/soft-blend.test.ts',
      'unit/core/reading/families/choose-families.family-edits.test.ts',
      'unit/core/reading/families/paint-order.test.ts',
      'unit/core/reading/read-picture.lightness-map.test.ts',
      'unit/core/reading/read-picture.odd-pictures.test.ts',
      'unit/core/reading/shapes/',
      'unit/core/reading/subject/',
      'unit/core/reading/values/choose-limits.proposal.test.ts',
      'unit/core/reading/whites/',
      'unit/core/reference/move-crop.finger.test.ts',
      'unit/core/reference/move-crop.test.ts',
      'unit/core/reference/photo-stroke.test.ts',
      'unit/core/words/reading-words.test.ts',
      'unit/screens/look/band-limits.test.ts',
    ],
  'paints, mixes and swatches reckoned by the test and found again by the code, or reckoned a second, slower way':
    [
      'unit/core/paint/former-amounts.test.ts',
      'unit/core/paint/measure/',
      'unit/core/paint/mix-neighbours.test.ts',
      'unit/core/paint/renew-paints.test.ts',
      'unit/core/paint/seen-layer.test.ts',
      'unit/core/paint/strength-corrections.plans.test.ts',
      'unit/core/palette/library/',
      'unit/core/palette/search/search-palette.palette-tables.test.ts',
      'unit/core/plan/offer-palettes.test.ts',
      'unit/core/plan/runs/',
      'unit/core/plan/solve/',
    ],
  'counts, places, sizes on screen and moments of what the test itself did or typed': [
    'browser/',
    'e2e/',
    'unit/client/',
    'unit/core/plan/build-plan.plan-whites.test.ts',
    'unit/core/plan/build-plan.wash-plan-property.test.ts',
    'unit/core/plan/build-plan.wash-plan-steps.test.ts',
    'unit/core/plan/edits/',
    'unit/core/plan/evening/cut-evenings.test.ts',
    'unit/core/plan/puddle-amount.squeezed.test.ts',
    'unit/core/plan/rules/check-rules.test.ts',
    'unit/core/plan/step-changes.test.ts',
    'unit/core/plan/steps/apply-steps-to-sheet.test.ts',
    'unit/core/plan/targets/adjust-targets.test.ts',
    'unit/core/session/',
    'unit/core/words/minutes.test.ts',
    'unit/core/words/typed-number.test.ts',
    'unit/house/',
    'unit/state/',
    'unit/storage/',
    'unit/support/',
    'unit/tools/compare/',
    'unit/tools/plan/own-paints-file.test.ts',
    'unit/ui/',
    'unit/workers/',
  ],
};

const exemptPaths = Object.values(exempt)
  .flat()
  .map((path) => `tests/${path}`);

const isUnder = (file: string, path: string): boolean =>
  path.endsWith('/') ? file.startsWith(path) : file === path;

describe('tests say where their figures come from', () => {
  test('all but those whose figures are made by the test itself', async () => {
    const files = await sourceFiles(['tests'], ['.test.ts', '.test.tsx', '.spec.ts', '.soak.ts']);
    expect(files.length).toBeGreaterThan(300);
    const unsourced = files
      .map((file) => ({ path: file.path, figures: unsourcedFigures(file, attributed) }))
      .filter(({ figures }) => figures.length > 0);
    const told = unsourced
      .filter(({ path }) => !exemptPaths.some((each) => isUnder(path, each)))
      .map(({ path, figures }) => `${path}: ${[...new Set(figures)].slice(0, 8).join(', ')}`);
    expect(told).toEqual([]);
    // No exemption stays longer than it is needed.
    const idle = exemptPaths.filter((each) => !unsourced.some(({ path }) => isUnder(path, each)));
    expect(idle).toEqual([]);
  });

  const figuresOf = (text: string): number[] =>
    unsourcedFigures({ path: 'tests/unit/x.test.ts', text }, 'colorimetry.json');

  test.each([
    ["test('dries', () => expect(dryMinutes(40)).toBe(52));", [52]],
    ["test('dries', () => expect(minutes).not.toBeLessThan(0.5));", [0.5]],
    ["test.each([[20, 59]])('%s', (c, rate) => expect(rateAt(c)).toBe(rate));", [20, 59]],
    ['expect(sheet).toEqual({ widthMm: 381, parts: [2, 3] });', [381, 3]],
    ['// As painters have it.\nexpect(minutes).toBe(52);', [52]],
    ['// A raster of 1600 px.\nexpect(minutes).toBe(52);', [52]],
    ["import made from '../fixtures/made-up.json';\nexpect(made.x).toBe(52);", [52]],
    ["const author = 'Penman 1948';\nexpect(minutes).toBe(52);", [52]],
  ])('%j would be seen', (text, figures) => {
    expect(figuresOf(text)).toEqual(figures);
  });

  test.each([
    '// Source: Penman, H. L., 1948.\nexpect(rate).toBe(52);',
    '// Kubelka, P., New contributions to the optics of intensely\n// light-scattering materials, 1948.\nexpect(r).toBe(0.4);',
    '// ISO 216:2007\nexpect(sheet.widthMm).toBe(210);',
    '// Own limits.\nexpect(limit).toBe(52);',
    '/** Common practice, no source. */\nexpect(limit).toBe(52);',
    "test('rule R7: leave it', () => expect(limit).toBe(52));",
    "describe('Chen et al. 2019', () => expect(spread.mean).toBeLessThan(2.3));",
    "import { lab65 } from 'culori';\nexpect(l).toBe(53.4);",
    "import colours from '../fixtures/colorimetry.json';\nexpect(l).toBe(53.4);",
    'expect(list).toHaveLength(52);',
    'expect(x).toBeCloseTo(1, 9);',
    'expect(share).toBe(1);',
  ])('%j is fine', (text) => {
    expect(figuresOf(text)).toEqual([]);
  });
});
