import type { Lab } from '../../../app/core/colour/lab.ts';
import type { Step, WashPlan } from '../../../app/core/plan/plan.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';

/** A sheet as it lies on the board: L*, a*, b* of every pixel, row by row, and where there is paint. */
export interface DrawnSheet {
  readonly width: number;
  readonly height: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lab: Float32Array;
}

/** What was painted otherwise than planned at a pixel: the colour it has instead. */
export type Change = (lab: Lab, slot: number, x: number, y: number) => Lab;

const decode = (code: number): number => {
  const v = code / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
};
const curve = (t: number): number =>
  t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27) * (t / 116) + 16 / 116;

/** Lab (D65) of sRGB bytes, by the textbook: IEC 61966-2-1, ISO/CIE 11664-4. */
function labOfCodes(red: number, green: number, blue: number): Lab {
  const [r, g, b] = [decode(red), decode(green), decode(blue)];
  const x = curve((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = curve(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = curve((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Soft edges of a reading that this sheet has crisp all the same, by their index. */
export interface Drawing {
  readonly change?: Change;
  readonly crisp?: (edge: number) => boolean;
}

/**
 * The sheet after a step, drawn from the plan's figures by slow and plain means of its own: colours of the squares
 * go over into each other, soft edges are blurred round their course, marks are filled cells.
 */
export function drawSheet(
  reading: Reading,
  slotMap: Uint8Array,
  plan: WashPlan,
  step: Step,
  { change = (lab) => lab, crisp = () => false }: Drawing = {},
): DrawnSheet {
  const { width, height } = reading.raster;
  const { squares } = reading;
  const lab = new Float32Array(3 * width * height);
  const rowAt = new Map<number, number>();
  const count = squares ? squares.across * squares.down : 0;
  squares?.slots.forEach((slot, row) => {
    rowAt.set(slot * count + (squares.squares[row] as number), row);
  });
  const { look } = step;
  const rowLabs =
    look && squares
      ? squares.slots.map((_, row) =>
          labOfCodes(
            look[3 * row] as number,
            look[3 * row + 1] as number,
            look[3 * row + 2] as number,
          ),
        )
      : [];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const slot = slotMap[i] as number;
      let own = (step.after[slot] ?? plan.paper) as Lab;
      if (squares && look) {
        const [u, v] = [(x + 0.5) / squares.sidePx - 0.5, (y + 0.5) / squares.sidePx - 0.5];
        const [left, top] = [Math.floor(u), Math.floor(v)];
        let [l, a, b, all] = [0, 0, 0, 0];
        for (let n = 0; n < 4; n++) {
          const [c, r] = [n & 1, n >> 1];
          const column = Math.min(squares.across - 1, Math.max(0, left + c));
          const line = Math.min(squares.down - 1, Math.max(0, top + r));
          const row = rowAt.get(slot * count + line * squares.across + column);
          if (row === undefined) continue;
          const weight = (c ? u - left : 1 - u + left) * (r ? v - top : 1 - v + top);
          const rowLab = rowLabs[row] as Lab;
          l += weight * rowLab[0];
          a += weight * rowLab[1];
          b += weight * rowLab[2];
          all += weight;
        }
        if (all > 0) own = [l / all, a / all, b / all];
      }
      lab.set(change(own, slot, x, y), 3 * i);
    }
  }
  softenEdges(reading, slotMap, lab, crisp);
  for (const { shape, lab: colour } of step.marks ?? []) {
    const found = reading.details?.shapes[shape];
    const cell = reading.details?.cellPx ?? 1;
    const lines = found?.lines ?? [];
    for (let n = 0; n < lines.length; n += 3) {
      const top = Math.round((lines[n] as number) * cell);
      const bottom = Math.round(((lines[n] as number) + 1) * cell);
      for (let y = top; y < Math.min(height, bottom); y++)
        for (
          let x = Math.round((lines[n + 1] as number) * cell);
          x < Math.min(width, Math.round((lines[n + 2] as number) * cell));
          x++
        ) {
          const slot = slotMap[y * width + x] as number;
          lab.set(change(colour, slot, x, y), 3 * (y * width + x));
        }
    }
  }
  return { width, height, ...reading.sheet, lab };
}

/** Blurs the two sides of soft and lost edges into each other, as wide as they are. */
function softenEdges(
  reading: Reading,
  slotMap: Uint8Array,
  lab: Float32Array,
  crisp: (edge: number) => boolean,
): void {
  const { width, height } = reading.raster;
  const long = Math.max(width, height);
  const reach = new Float32Array(width * height);
  const edgeAt = new Int32Array(width * height);
  for (const [n, edge] of (reading.edges ?? []).entries()) {
    const kind =
      edge.wish === 'soften'
        ? 'soft'
        : edge.wish === 'lose'
          ? 'lost'
          : edge.wish === 'sharpen'
            ? 'hard'
            : edge.kind;
    if (kind === 'hard' || kind === 'found' || crisp(n)) continue;
    const least = kind === 'lost' || edge.wish === 'soften' ? 0.012 : 0;
    const wide = Math.min(kind === 'lost' ? 0.06 : 1, Math.max(edge.widthShare, least)) * long;
    const radius = Math.max(1, wide / 1.6);
    edge.path.forEach(([px, py], k) => {
      const [qx, qy] = edge.path[Math.max(0, k - 1)] as readonly [number, number];
      const steps = Math.max(1, Math.ceil(Math.hypot((px - qx) * width, (py - qy) * height) / 2));
      for (let s = 0; s < steps; s++) {
        const cx = (qx + ((px - qx) * s) / steps) * width;
        const cy = (qy + ((py - qy) * s) / steps) * height;
        for (
          let y = Math.max(0, Math.floor(cy - radius));
          y <= Math.min(height - 1, cy + radius);
          y++
        )
          for (
            let x = Math.max(0, Math.floor(cx - radius));
            x <= Math.min(width - 1, cx + radius);
            x++
          ) {
            const away = Math.hypot(x + 0.5 - cx, y + 0.5 - cy);
            const near = radius * (1 - away / radius);
            const slot = slotMap[y * width + x];
            if (slot !== edge.a && slot !== edge.b) continue;
            if (near <= (reach[y * width + x] as number)) continue;
            reach[y * width + x] = near;
            edgeAt[y * width + x] = n;
          }
      }
    });
  }
  const before = Float32Array.from(lab);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const own = reach[y * width + x] as number;
      if (own < 0.7) continue;
      const edge = reading.edges?.[edgeAt[y * width + x] as number];
      const r = Math.min(24, own);
      const stride = Math.max(1, Math.floor(r / 4));
      let [l, a, b, n] = [0, 0, 0, 0];
      for (let v = -r; v <= r; v += stride)
        for (let u = -r; u <= r; u += stride) {
          if (u * u + v * v > r * r) continue;
          const [px, py] = [Math.round(x + u), Math.round(y + v)];
          if (px < 0 || py < 0 || px >= width || py >= height) continue;
          const other = slotMap[py * width + px];
          if (other !== edge?.a && other !== edge?.b) continue;
          const j = 3 * (py * width + px);
          l += before[j] as number;
          a += before[j + 1] as number;
          b += before[j + 2] as number;
          n++;
        }
      lab.set([l / n, a / n, b / n], 3 * (y * width + x));
    }
}
