import { expect, test } from 'vitest';
import { drawPlanPicture } from '../../../app/drawing/plan-picture.ts';
import { notedCanvas } from '../../support/drawing/noted-context.ts';

// Lengths as the code tells them (own): 1080 px wide, edge 48, gaps 24, type 48, 36, 32 px.

const line = (px: number): number => px * 1.35;
const high = 0.75 * (1080 - 96);

function drawn(steps: readonly { title: string; words: string }[], cautions: string[] = []) {
  const { canvas, noted, made } = notedCanvas();
  const picture = drawPlanPicture(canvas, {
    ...{ title: 'Seed heads', size: { width: 40, height: 30 }, cautions },
    steps: steps.map((step, i) => ({ ...step, draw: (on) => on.fillRect(i, 0, 1, 1) })),
  });
  expect(picture).toBe(canvas);
  return { canvas, noted, made };
}

test('a title, and under it each step: its sheet, its title and its words, then what to mind', () => {
  const { noted, canvas, made } = drawn(
    [
      { title: 'First wash', words: 'Wet the sheet.' },
      { title: 'Second wash', words: 'Let it dry.' },
    ],
    ['Wash your hands.', 'No dust.'],
  );
  const [paper, ...rest] = noted.drawn;
  expect(paper).toMatchObject({ did: 'fillRect', fillStyle: '#ffffff' });
  expect(paper?.with.slice(0, 3)).toEqual([0, 0, 1080]);
  let top = 48;
  const wanted: { text?: string; with: unknown; font?: string }[] = [];
  const text = (words: string, px: number, weight: number): void => {
    const font = expect.stringMatching(`^${weight} ${px}px `) as unknown as string;
    wanted.push({ text: words, with: [48, expect.closeTo(top, 6)], font });
    top += line(px);
  };
  text('Seed heads', 48, 600);
  top += 24;
  for (const [title, words] of [
    ['First wash', 'Wet the sheet.'],
    ['Second wash', 'Let it dry.'],
  ] as const) {
    wanted.push({ with: [48, expect.closeTo(top, 6), 984, high] });
    top += high + 24;
    text(title, 36, 600);
    text(words, 32, 400);
    top += 48;
  }
  for (const words of ['Wash your hands.', 'No dust.']) {
    text(words, 32, 400);
    top += 24;
  }
  expect(rest).toMatchObject(wanted);
  for (const each of rest.filter(({ did }) => did === 'fillText'))
    expect([each.fillStyle, each.set.split(' ')[3]]).toEqual(['#121212', 'top']);
  // Below the last line the edge, to the pixel.
  expect(canvas.height).toBe(Math.ceil(top + 48));
  expect([canvas.width, paper?.with[3]]).toEqual([1080, canvas.height]);
  expect(noted.scales).toEqual([1, 1]);
  const sheet = made[1];
  expect(sheet?.canvas).toMatchObject({ width: 40, height: 30 });
  expect(sheet?.drawn.map((each) => each.with[0])).toEqual([0, 1]);
});

test('long words are broken in lines no wider than the room', () => {
  const words = 'Lay the sky evenly from top to bottom and let it dry. '.repeat(4);
  const { noted } = drawn([{ title: 'Wash', words }]);
  const lines = noted.drawn.filter(({ font, did }) => did === 'fillText' && /^400/.test(font));
  expect(lines.length).toBeGreaterThan(2);
  expect(lines.map(({ text }) => text).join(' ')).toBe(words.trim());
  const wide = lines.map(({ text = '' }) => text.length * 16);
  for (const each of wide) expect(each).toBeLessThanOrEqual(984);
  for (const each of wide.slice(0, -1)) expect(each).toBeGreaterThan(984 - 160);
});

test('a plan that is too tall is drawn smaller, so that a canvas of 4096 x 4096 px holds it', () => {
  const { noted, canvas } = drawn(
    Array.from({ length: 40 }, () => ({ title: 'Wash', words: '-' })),
  );
  const full = noted.drawn[0]?.with[3] as number;
  const scale = Math.sqrt(4096 ** 2 / (1080 * full));
  expect(noted.scales[0]).toBeCloseTo(scale, 9);
  expect(noted.scales[1]).toBeCloseTo(scale, 9);
  expect(canvas.width).toBe(Math.floor(1080 * scale));
  expect(canvas.height).toBe(Math.floor(full * scale));
});

test('without a context nothing is drawn', () => {
  const canvas = { getContext: () => null } as unknown as HTMLCanvasElement;
  const plan = { title: '', steps: [], size: { width: 4, height: 3 }, cautions: [] };
  expect(drawPlanPicture(canvas, plan)).toBeNull();
});
