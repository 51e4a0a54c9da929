import {
  gridData,
  gridNames,
  gridStyle,
  type OutlineChoice,
  outlinePaths,
} from '../../drawing/outline-paths.ts';
import type { Outline } from '../../model/outline.ts';

interface OutlineLinesProps {
  outline: Outline;
  choice: OutlineChoice;
  /** Lines this much thicker than in print, where the drawing is shown small. */
  thicker?: number;
  /** A name to use the lines again by. */
  id?: string;
}

/** The drawing as it is printed and saved, in mm of the sheet. */
export function OutlineLines({ outline, choice, thicker = 1, id }: OutlineLinesProps) {
  const { widthMm, heightMm } = outline;
  const { letters, line, frame, grey } = gridStyle;
  return (
    <g id={id} fill="none" stroke="#000" stroke-linecap="round" stroke-linejoin="round">
      <rect width={widthMm} height={heightMm} stroke-width={frame * thicker} />
      {choice.grid && (
        <>
          <path d={gridData(outline)} stroke={grey} stroke-width={line * thicker} />
          <g fill={grey} stroke="none" font-family="sans-serif" font-size={letters * thicker}>
            {gridNames(outline).map(({ text, x, y }) => (
              <text key={text} x={x} y={y + letters * (thicker - 1)}>
                {text}
              </text>
            ))}
          </g>
        </>
      )}
      {outlinePaths(outline, choice).map(({ d, width, dash }, i) => (
        <path
          key={i}
          d={d}
          stroke-width={width * thicker}
          stroke-dasharray={dash.map((length) => length * thicker).join(' ') || undefined}
        />
      ))}
    </g>
  );
}
