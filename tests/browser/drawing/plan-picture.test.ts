import { expect, test } from 'vitest';
import { drawPlanPicture, linesOf } from '../../../app/drawing/plan-picture.ts';

test('words are laid in lines, none of them lost, none wider than may be but a word by itself', () => {
  const widthOf = (text: string) => text.length;
  expect(linesOf('the first wash over  all', widthOf, 9)).toEqual([
    'the first',
    'wash over',
    'all',
  ]);
  expect(linesOf('immeasurable', widthOf, 4)).toEqual(['immeasurable']);
  expect(linesOf(' ', widthOf, 4)).toEqual([]);
});

const step = (title: string, colour: string) => ({
  title,
  words: 'Wet the sheet evenly and lay the sky from top to bottom. '.repeat(4),
  draw: (context: CanvasRenderingContext2D) => {
    context.fillStyle = colour;
    context.fillRect(0, 0, 40, 30);
  },
});

test('every step has its sheet and its words, one under the other', () => {
  const [one, two] = [step('1. First wash', '#804020'), step('2. Second wash', '#204080')];
  const size = { width: 40, height: 30 };
  const drawn = (steps: (typeof one)[], cautions: string[] = []) =>
    drawPlanPicture(document.createElement('canvas'), {
      title: 'seed heads',
      steps,
      size,
      cautions,
    });
  const picture = drawn([one, two]);
  expect(picture?.width).toBe(1080);
  const more = (picture?.height ?? 0) - (drawn([one])?.height ?? 0);
  expect(more).toBeGreaterThan(984 * 0.75 + 100); // its sheet, and under it its words
  const minded = drawn([one, two], ['Wash your hands afterwards.']);
  expect(minded?.height).toBeGreaterThan((picture?.height ?? 0) + 32);
  const pixels = picture?.getContext('2d');
  const seen = new Map<string, number>();
  for (let y = 0; y < (picture?.height ?? 0); y += 10) {
    const [r, g, b] = pixels?.getImageData(540, y, 1, 1).data ?? [];
    const key = `${r} ${g} ${b}`;
    seen.set(key, (seen.get(key) ?? 0) + 1);
  }
  expect(seen.get('128 64 32')).toBeGreaterThan(70);
  expect(seen.get('32 64 128')).toBeGreaterThan(70);
});

test('a plan of very many steps still fits a canvas', () => {
  const many = Array.from({ length: 40 }, (_, i) => step(`${i}`, '#000'));
  const picture = drawPlanPicture(document.createElement('canvas'), {
    ...{ title: 'long', steps: many, size: { width: 40, height: 30 }, cautions: [] },
  });
  const pixels = (picture?.width ?? 0) * (picture?.height ?? 0);
  expect(pixels).toBeGreaterThan(10_000_000);
  expect(pixels).toBeLessThanOrEqual(16_777_216);
});
