import { afterAll, beforeAll, expect, test } from 'vitest';
import { drawRecordPicture } from '../../../app/drawing/record-picture.ts';
import { notedCanvas } from '../../support/drawing/noted-context.ts';

// Lengths as the code tells them (own): 1800 px wide, edge 48, gaps 24, type 52 and 30 px.

class MadeBitmap {
  readonly width: number;
  readonly height: number;
  constructor(width: number, height: number) {
    [this.width, this.height] = [width, height];
  }
}
const global = globalThis as { ImageBitmap?: unknown };
const before = global.ImageBitmap;
beforeAll(() => {
  global.ImageBitmap = MadeBitmap;
});
afterAll(() => {
  global.ImageBitmap = before;
});

const line = 30 * 1.35;
const room = 1800 - 96;

test('a title and a line under it, pictures beside one another with their words, then the notes', () => {
  const { canvas, noted, made } = notedCanvas();
  const photo = new MadeBitmap(300, 100) as unknown as ImageBitmap;
  const tall = new MadeBitmap(100, 400) as unknown as ImageBitmap;
  const picture = drawRecordPicture(canvas, {
    ...{ title: 'Seed heads', head: 'Two hours', size: { width: 40, height: 30 } },
    pictures: [
      { words: 'Reference', draw: (on) => on.fillRect(5, 6, 7, 8) },
      { words: 'Plan', draw: photo },
      { words: 'Painting', draw: tall },
    ],
    lines: ['Damp evening.', 'More water next time.'],
  });
  expect(picture).toBe(canvas);
  const wide = (room - 48) / 3;
  const high = Math.round(wide * 0.75);
  const [paper, title, head, ...rest] = noted.drawn;
  expect(paper).toMatchObject({ fillStyle: '#ffffff', with: [0, 0, 1800, canvas.height] });
  expect(title).toMatchObject({ text: 'Seed heads', with: [48, 48, room] });
  expect(title?.font).toMatch(/^600 52px/);
  const under = 48 + 52 * 1.35;
  expect(head).toMatchObject({ text: 'Two hours', with: [48, expect.closeTo(under, 6), room] });
  expect(head?.font).toMatch(/^400 30px/);
  const top = under + line + 24;
  const shapes = [
    [wide, high], // of the sheet's own shape
    [wide, wide / 3],
    [high / 4, high],
  ] as const;
  for (const [i, [w, h]] of shapes.entries()) {
    const left = 48 + i * (wide + 24);
    const [ground, image, words] = rest.slice(3 * i, 3 * i + 3);
    const near = (...numbers: number[]) => numbers.map((n) => expect.closeTo(n, 0));
    expect(ground).toMatchObject({ did: 'fillRect', fillStyle: '#777777' });
    expect(ground?.with).toEqual(near(left, top, wide, high));
    expect(image?.did).toBe('drawImage');
    expect(image?.with).toEqual(near(left + (wide - w) / 2, top + (high - h) / 2, w, h));
    expect(words).toMatchObject({
      text: ['Reference', 'Plan', 'Painting'][i],
      fillStyle: '#121212',
    });
    expect(words?.font).toMatch(/^400 30px/);
    expect(words?.with).toEqual([left, top + high + 8, wide].map((n) => expect.closeTo(n, 6)));
  }
  expect(rest[4]?.image).toBe(photo);
  expect(made[1]?.canvas).toMatchObject({ width: 40, height: 30 });
  expect(made[1]?.drawn[0]?.with).toEqual([5, 6, 7, 8]);
  const notes = top + high + line + 48;
  expect(rest.slice(9)).toMatchObject([
    { text: 'Damp evening.', with: [48, expect.closeTo(notes, 6)] },
    { text: 'More water next time.', with: [48, expect.closeTo(notes + line, 6)] },
  ]);
  for (const each of noted.drawn.filter(({ did }) => did === 'fillText'))
    expect(each.set).toMatch(/top$/);
  expect(canvas.width).toBe(1800);
  expect(canvas.height).toBe(Math.ceil(notes + 2 * line + 48));
});

test('notes too long for a line are broken, and without pictures there is still a record', () => {
  const { canvas, noted } = notedCanvas();
  const words = 'The far bank stayed too dark, lift it before the grass. '.repeat(4).trim();
  const size = { width: 40, height: 40 };
  drawRecordPicture(canvas, { title: 'A', head: 'B', size, pictures: [], lines: [words] });
  const lines = noted.drawn.slice(3);
  expect(lines.map(({ text }) => text).join(' ')).toBe(words);
  expect(lines.length).toBe(Math.ceil((words.length * 15) / room));
  expect(canvas.height).toBeGreaterThan(room); // room for a picture is kept
  const bare = { getContext: () => null } as unknown as HTMLCanvasElement;
  expect(
    drawRecordPicture(bare, { title: '', head: '', size, pictures: [], lines: [] }),
  ).toBeNull();
});
