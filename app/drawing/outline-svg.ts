import type { Outline } from '../model/outline.ts';
import {
  gridData,
  gridNames,
  gridStyle,
  type OutlineChoice,
  outlinePaths,
} from './outline-paths.ts';

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
