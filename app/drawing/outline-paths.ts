import type { Outline, OutlineKind, OutlineLine, OutlineRole } from '../model/outline.ts';
import { rowLetter } from '../model/outline-grid.ts';

/** What she wants to see of the drawing. */
export interface OutlineChoice {
  readonly grid: boolean;
  readonly soft: boolean;
  readonly inner: boolean;
}

/** One path of the drawing, all lengths in mm. */
export interface OutlinePath {
  readonly d: string;
  readonly width: number;
  /** Lengths of stroke and gap; empty for a full line. */
  readonly dash: readonly number[];
}

/** Thickest round whites: their line matters most. */
const widths: Readonly<Record<OutlineKind, Readonly<Record<OutlineRole, number>>>> = {
  hard: { white: 0.7, outer: 0.5, inner: 0.35 },
  found: { white: 0.35, outer: 0.25, inner: 0.2 },
  soft: { white: 0.6, outer: 0.5, inner: 0.4 },
};
const dots = [0.01, 1.7];

const mm = (value: number): string => String(Math.round(value * 100) / 100);

/** The `d` of an SVG path through points in mm. */
export const lineData = ({ points }: Pick<OutlineLine, 'points'>): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${mm(x)} ${mm(y)}`).join('');

const kinds = ['soft', 'found', 'hard'] as const;
const roles = ['inner', 'outer', 'white'] as const;

/** The lines of a drawing, joined by how they are drawn. */
export function outlinePaths({ lines }: Outline, { soft, inner }: OutlineChoice): OutlinePath[] {
  const paths: OutlinePath[] = [];
  for (const kind of kinds) {
    for (const role of roles) {
      if ((kind === 'soft' && !soft) || (role === 'inner' && !inner)) continue;
      const own = lines.filter((line) => line.kind === kind && line.role === role);
      if (own.length === 0) continue;
      const dash = kind === 'soft' ? dots : [];
      paths.push({ d: own.map(lineData).join(''), width: widths[kind][role], dash });
    }
  }
  return paths;
}

/** The lines of the grid as one path. */
export function gridData({ grid, widthMm, heightMm }: Outline): string {
  const upright = Array.from(
    { length: grid.across - 1 },
    (_, i) => `M${mm((i + 1) * grid.sideMm)} 0V${mm(heightMm)}`,
  );
  const level = Array.from(
    { length: grid.down - 1 },
    (_, i) => `M0 ${mm((i + 1) * grid.sideMm)}H${mm(widthMm)}`,
  );
  return [...upright, ...level].join('');
}

/** The name of every square, at its upper left: A1, A2 ... mm. */
export function gridNames({ grid }: Outline): { text: string; x: number; y: number }[] {
  return Array.from({ length: grid.across * grid.down }, (_, i) => {
    const [column, row] = [i % grid.across, Math.floor(i / grid.across)];
    const text = `${rowLetter(row)}${column + 1}`;
    return { text, x: column * grid.sideMm + 1.2, y: row * grid.sideMm + 4.2 };
  });
}

/** Height of the names' letters, mm, and width of the grid's lines and of the sheet's own. */
export const gridStyle = { letters: 3.2, line: 0.15, frame: 0.3, grey: '#777' } as const;
