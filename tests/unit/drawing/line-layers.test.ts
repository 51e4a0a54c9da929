import { expect, test } from 'vitest';
import type { Edge, EdgeKind, EdgeWish } from '../../../app/core/reading/edges/edge.ts';
import type { WhiteWay } from '../../../app/core/reading/whites/whites.ts';
import {
  decidedMark,
  edgeLayer,
  edgeLines,
  paled,
  whiteLines,
  whitesLayer,
} from '../../../app/drawing/line-layers.ts';
import { NotedContext } from '../../support/drawing/noted-context.ts';

// Figures are those of the made edges and of the tables under test; widths of casings: (own).

const size = { width: 1000, height: 500 };

const madeEdge = (kind: EdgeKind, path: Edge['path'], wish?: EdgeWish): Edge => ({
  ...(wish && { wish }),
  ...{ a: 0, b: 1, kind, graded: false, heldByColour: false, outOfFocus: false, contrast: 20 },
  ...{ widthMm: 1, widthShare: 0.003, lengthMm: 100, path },
});

function draw(edges: readonly Edge[]): NotedContext {
  const noted = new NotedContext(size);
  edgeLayer((under) => under.fillRect(1, 2, 3, 4), edges)(noted.context);
  return noted;
}

test('every kind of edge is drawn twice, in a wider white and then in black, over what is under it', () => {
  const kinds = ['lost', 'soft', 'found', 'hard'] as const;
  const edges = kinds.map((kind, i) =>
    madeEdge(kind, [
      [0.1, i / 10],
      [0.3, (i + 1) / 4],
      [0.9, i / 5],
    ]),
  );
  const { drawn } = draw(edges);
  expect(drawn[0]).toMatchObject({ did: 'fillRect', with: [1, 2, 3, 4] });
  for (const [colour, casing, from] of [
    ['white', 2.2, 1],
    ['black', 0, 6],
  ] as const)
    for (const [i, kind] of kinds.entries()) {
      const stroke = drawn[from + i];
      expect(stroke).toMatchObject({ did: 'stroke', strokeStyle: colour, lines: [1, 0] });
      expect(stroke?.set).toMatch(/^round round/);
      expect(stroke?.lineWidth).toBeCloseTo(1000 * edgeLines[kind].width + casing, 9);
      expect(stroke?.dash).toEqual(edgeLines[kind].dash.map((share) => 1000 * share));
      expect(stroke?.with).toEqual([100, 50 * i, 300, 125 * (i + 1), 900, 100 * i]);
    }
  expect(drawn).toHaveLength(11);
});

test('lines of edges are told apart: a hard one is widest and full, a soft one a row of dots, a lost one mostly gap', () => {
  const { hard, found, soft, lost } = edgeLines;
  expect([hard.dash, found.dash]).toEqual([[], []]);
  expect(found.width).toBeLessThan(hard.width / 2);
  expect(soft.dash[0]).toBeLessThan(soft.width / 10); // round caps make a dot of it
  expect(soft.dash[1]).toBeGreaterThan(2 * soft.width); // and it stays one
  expect(lost.dash[1]).toBeGreaterThan(3 * (lost.dash[0] as number));
});

test('an edge she has decided bears a stroke across its middle, at a right angle, full and in both colours', () => {
  // 600 px along, 300 px down: its middle is 500, 250.
  const slanting: Edge['path'] = [
    [0.2, 0.2],
    [0.8, 0.8],
  ];
  const path = slanting.map(([x, y]) => [x, y] as const);
  const decided = draw([madeEdge('hard', path, 'keep'), madeEdge('hard', path)]).drawn;
  const marks = [decided[5], decided[10]];
  const half = (decidedMark.length * 1000) / 2;
  for (const [i, mark] of marks.entries()) {
    expect(mark?.dash).toEqual([]);
    expect(mark?.lineWidth).toBeCloseTo(1000 * decidedMark.width + (i === 0 ? 2.2 : 0), 9);
    const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = mark?.with ?? [];
    expect([(x0 + x1) / 2, (y0 + y1) / 2]).toEqual([
      expect.closeTo(500, 9),
      expect.closeTo(250, 9),
    ]);
    expect(Math.hypot(x1 - x0, y1 - y0)).toBeCloseTo(2 * half, 9);
    expect((x1 - x0) * 600 + (y1 - y0) * 300).toBeCloseTo(0, 6);
    expect(mark?.with).toHaveLength(4);
  }
  const still = draw([
    madeEdge(
      'hard',
      [
        [0.5, 0.5],
        [0.5, 0.5],
      ],
      'keep',
    ),
  ]).drawn[5]?.with;
  expect(still).toEqual([500, 250 - half, 500, 250 + half]); // an edge without length
});

test('an edge is drawn as what it is to be', () => {
  const path: Edge['path'] = [
    [0, 0],
    [1, 1],
  ];
  const { drawn } = draw([madeEdge('hard', path, 'soften')]);
  expect(drawn[2]?.with).toEqual([0, 0, 1000, 500]); // second of four: soft
  expect(drawn[4]?.with).toEqual([]);
});

test('a picture is greyed as a whole under many lines', () => {
  const noted = new NotedContext(size);
  paled((under) => under.fillRect(9, 9, 9, 9))(noted.context);
  expect(noted.drawn.map((each) => each.with)).toEqual([
    [9, 9, 9, 9],
    [0, 0, 1000, 500],
  ]);
  expect(noted.drawn[1]?.fillStyle).toBe('rgb(170 170 170 / 0.45)');
});

test('whites are filled as paper, and outlined by the way each is kept', () => {
  const noted = new NotedContext({ width: 400, height: 1000 });
  const outlines = [0, 1, 2, 1].map((white, i) => ({
    ...{ white, points: Float32Array.of(i, 1, i + 10, 1, i + 10, 20) },
  }));
  const ways: readonly WhiteWay[] = ['round', 'mask', 'last'];
  whitesLayer((under) => under.fillRect(1, 1, 1, 1), outlines as never, ways)(noted.context);
  const [under, paper, ...lines] = noted.drawn;
  const pathOf = (i: number): number[] => [...(outlines[i]?.points ?? [])];
  expect(under?.did).toBe('fillRect');
  expect(paper).toMatchObject({ did: 'fill', fillStyle: 'rgb(255 255 255 / 0.9)', lines: [4, 4] });
  expect(paper?.with).toEqual([0, 1, 2, 3].flatMap(pathOf));
  const wanted = [
    ['last', pathOf(2)],
    ['mask', [...pathOf(1), ...pathOf(3)]],
    ['round', pathOf(0)],
  ] as const;
  for (const [n, [colour, casing]] of (
    [
      ['white', 2],
      ['black', 0],
    ] as const
  ).entries())
    for (const [i, [way, path]] of wanted.entries()) {
      const line = lines[3 * n + i];
      expect(line).toMatchObject({ did: 'stroke', strokeStyle: colour, with: path });
      expect(line?.set).toMatch(/^round round/);
      expect(line?.lineWidth).toBeCloseTo(1000 * whiteLines[way].width + casing, 9);
      expect(line?.dash).toEqual(whiteLines[way].dash.map((share) => 1000 * share));
    }
  expect(lines).toHaveLength(6);
  noted.context.stroke();
  expect(noted.drawn.at(-1)?.dash).toEqual([]); // whoever draws next starts with a full line
});

test('ways of keeping a white are told apart by line: full, dashes as long as their gaps, dots', () => {
  expect(whiteLines.round.dash).toEqual([]);
  const [stroke, gap] = whiteLines.mask.dash as [number, number];
  expect(stroke / gap).toBeCloseTo(1, 6);
  expect(stroke).toBeGreaterThan(2 * whiteLines.mask.width);
  const [dot, between] = whiteLines.last.dash as [number, number];
  expect(dot).toBeLessThan(whiteLines.last.width / 10);
  expect(between).toBeGreaterThan(1.5 * whiteLines.last.width);
});
