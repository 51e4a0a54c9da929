import type { OutlineKind, OutlineLine, OutlineRole } from './choose-strokes.ts';
import type { Outline } from './outline.ts';
import { rowLetter } from './outline-grid.ts';

/** What she wants to see of the drawing. */
export interface OutlineChoice {
  readonly grid: boolean;
  readonly soft: boolean;
  readonly inner: boolean;
}

/** One path of the drawing, all lengths in mm. */
interface OutlinePath {
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
const lineData = ({ points }: Pick<OutlineLine, 'points'>): string =>
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

/**
 * The drawing as an SVG 1.1 file (W3C) at true size: width and height in mm, one unit of the viewBox is
 * 1 mm. Black lines on nothing, told apart by line alone; no style sheet, no script.
 */
export function outlineSvg(outline: Outline, choice: OutlineChoice): string {
  const { widthMm, heightMm } = outline;
  const lines = outlinePaths(outline, choice).map(({ d, width, dash }) => {
    const dashes = dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : '';
    return `<path stroke-width="${width}"${dashes} d="${d}"/>`;
  });
  const { letters, line, frame, grey } = gridStyle;
  const grid = choice.grid
    ? [
        `<path stroke="${grey}" stroke-width="${line}" d="${gridData(outline)}"/>`,
        `<g fill="${grey}" stroke="none" font-family="sans-serif" font-size="${letters}">`,
        ...gridNames(outline).map(
          ({ text, x, y }) => `<text x="${x.toFixed(2)}" y="${y.toFixed(2)}">${text}</text>`,
        ),
        '</g>',
      ]
    : [];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">`,
    '<g fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round">',
    `<rect width="${widthMm}" height="${heightMm}" stroke-width="${frame}"/>`,
    ...grid,
    ...lines,
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

/** A name every file system takes: letters and digits of any script, the rest as single hyphens. */
export function fileName(title: string, ending: string): string {
  const safe = title
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${safe || 'painting'}-${ending}`;
}
