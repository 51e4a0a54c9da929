import { afterAll, afterEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { createAnalysisClient } from '../../../app/client/analysis-client.ts';
import { cssColour } from '../../../app/core/colour/lab.ts';
import { colourOfWashes } from '../../../app/core/paint/colour-of-washes.ts';
import { usualLoad } from '../../../app/core/paint/consistency.ts';
import { squaresOfPage } from '../../../app/core/paint/measure/refine-paints.ts';
import { emptyBox, type OwnBox, ownPaints } from '../../../app/core/paint/own-box.ts';
import type { Paint } from '../../../app/core/paint/paint.ts';
import { MixPageScreen } from '../../../app/screens/measure/mix-page-screen.tsx';
import { createMixPage } from '../../../app/state/paints/mix-page.ts';
import { createOwnBox, type OwnBoxState } from '../../../app/state/paints/own-box.ts';
import { paintNamed } from '../../support/paint/made-ladder.ts';
import { keptSettings } from '../../support/state/kept-settings.ts';
import { type Shown, shown } from './shown.ts';

const client = createAnalysisClient();
afterAll(() => client.dispose());
let screen: Shown;
afterEach(() => screen.leave());

const sienna = paintNamed('pbr7-burnt-sienna');
const blue = paintNamed('pb29-ultramarine-blue');
/** Her sienna is kept as half as strong as it is. */
const hers: Paint = {
  ...sienna,
  id: 'own-sienna',
  name: 'my sienna',
  strength: (sienna.strength ?? 1) / 2,
  optics: { from: 'measured', sure: 0.7, why: '' },
};
const truth = new Map([
  [hers.id, sienna],
  [blue.id, blue],
]);

/** A photo of the page of her sienna and ultramarine. */
async function pagePhoto(count = 3): Promise<File> {
  const canvas = new OffscreenCanvas(800, 600);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas');
  context.fillStyle = cssColour([88, 0, 0]);
  context.fillRect(0, 0, 800, 600);
  const places = [
    [120, 120],
    [360, 120],
    [120, 360],
  ] as const;
  for (const [n, ids] of squaresOfPage([hers.id, blue.id]).slice(0, count).entries()) {
    const paints = ids.map((id) => truth.get(id) as Paint);
    const wash = { paints, parts: ids.map(() => 1), load: usualLoad('milk') };
    const [l, a, b] = colourOfWashes([wash]);
    context.fillStyle = cssColour([(l * 88) / 94.6, a, b]);
    const [x, y] = places[n] as (typeof places)[number];
    context.fillRect(x, y, 120, 130);
  }
  return new File([await canvas.convertToBlob({ type: 'image/png' })], 'page.png');
}

async function opened(): Promise<{ ownBox: OwnBoxState; kept: () => boolean }> {
  const box: OwnBox = { ...emptyBox, owned: [hers.id, blue.id], paints: [hers] };
  const ownBox = createOwnBox(keptSettings(new Map([['paint box', box]])), client);
  let isKept = false;
  const onKept = (): void => {
    isKept = true;
  };
  const pages = keptSettings();
  const mixPage = createMixPage({ store: pages, client, ownBox });
  screen = shown(<MixPageScreen ownBox={ownBox} mixPage={mixPage} onKept={onKept} />);
  await page.getByLabelText('my sienna').click();
  await page.getByLabelText('ultramarine blue', { exact: true }).click();
  return { ownBox, kept: () => isKept };
}

const choose = async (file: File): Promise<void> => {
  const inputs = screen.host.querySelectorAll('input[type=file]');
  await userEvent.upload(inputs[1] as HTMLElement, file);
};

test('a page of mixes puts a measured paint right, as one more revision, in words', async () => {
  const { ownBox, kept } = await opened();
  await expect.element(page.getByRole('img', { name: 'Squares for each paint' })).toBeVisible();
  await choose(await pagePhoto());
  await expect
    .element(page.getByRole('button', { name: /^Frame 2,/ }))
    .toHaveAccessibleName(/my sienna \+ ultramarine blue/);
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await expect.element(page.getByTestId('refined')).toHaveTextContent(/my sienna: .*stronger/);
  await page.getByRole('button', { name: 'Keep it' }).click();
  await expect.poll(kept).toBe(true);
  const [refined] = ownPaints(ownBox.box.value);
  expect(refined?.revision).toBe(hers.revision + 1);
  expect(refined?.strength).toBeGreaterThan(1.3 * (hers.strength ?? 1));
  expect(refined?.K).toHaveLength(36);
});

test('says how many frames it needs', async () => {
  await opened();
  await choose(await pagePhoto(2));
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await expect.element(page.getByRole('alert')).toHaveTextContent('2 frames for 3 squares');
});
