import type { Edge } from '../../model/edge.ts';

/** Half the length of the strokes that end a lost stretch, px. */
const tickPx = 6;

const px = (value: number): string => value.toFixed(1);

/** A short stroke across the end of a path; `from` is the point before it. */
function tick([x, y]: readonly [number, number], [fromX, fromY]: readonly [number, number]) {
  const length = Math.hypot(x - fromX, y - fromY) || 1;
  const [dx, dy] = [(-(y - fromY) / length) * tickPx, ((x - fromX) / length) * tickPx];
  return `M${px(x - dx)} ${px(y - dy)}L${px(x + dx)} ${px(y + dy)}`;
}

/** Line styles by kind: a full line, dots, a thin line; of lost edges only the ends are drawn. */
const styles = {
  hard: { width: 3, dashes: '' },
  soft: { width: 4, dashes: ' stroke-dasharray="0 9"' },
  found: { width: 1.2, dashes: '' },
  lost: { width: 2, dashes: '' },
} as const;

/** SVG of edges told apart by line style alone, black with a white casing, for a picture of that size. */
export function edgeDrawing(edges: readonly Edge[], width: number, height: number): string {
  const layers = (Object.keys(styles) as Edge['kind'][]).map((kind) => {
    const paths = edges
      .filter((edge) => edge.kind === kind && edge.path.length > 1)
      .map(({ path }) => {
        const points = path.map(([x, y]) => [x * width, y * height] as const);
        const [first, second] = points as [(typeof points)[0], (typeof points)[0]];
        const [beforeLast, last] = points.slice(-2) as [typeof first, typeof first];
        if (kind === 'lost') return tick(first, second) + tick(last, beforeLast);
        return `M${points.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}`;
      })
      .join('');
    return { ...styles[kind], paths };
  });
  const drawn = (colour: string, wider: number): string =>
    layers
      .map(
        ({ width: stroke, dashes, paths }) =>
          `<path d="${paths}" stroke="${colour}" stroke-width="${stroke + wider}"${dashes}/>`,
      )
      .join('');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">` +
    '<g fill="none" stroke-linecap="round" stroke-linejoin="round">' +
    `${drawn('#fff', 2)}${drawn('#000', 0)}</g></svg>`
  );
}
