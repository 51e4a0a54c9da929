import styles from './paint-guide.module.css';

const ladder = ['1 cream', '2 half', '3 half again', '4 thin', '5 tea'];
const more = ['2 on black line', 'half white', 'half and half'];

interface BoxProps {
  x: number;
  y: number;
  text: string;
}

function Box({ x, y, text }: BoxProps) {
  return (
    <>
      <rect
        x={x}
        y={y}
        width="30"
        height="26"
        fill="none"
        stroke="currentColor"
        stroke-width="0.5"
      />
      <text x={x + 15} y={y + 32} font-size="4" text-anchor="middle" fill="currentColor">
        {text}
      </text>
    </>
  );
}

/** The boxes: a ladder of five, and three more that help. 186 x 110 mm when printed on a page. */
export function GuideDrawing({ name }: { name: string }) {
  return (
    <svg
      class={styles.drawing}
      viewBox="0 0 186 106"
      role="img"
      aria-label="Boxes for five steps, and three more"
    >
      <text x="4" y="8" font-size="5" fill="currentColor">
        {name}
      </text>
      {ladder.map((text, n) => (
        <Box key={text} x={4 + 37 * n} y={14} text={text} />
      ))}
      {more.map((text, n) => (
        <Box key={text} x={4 + 37 * n} y={60} text={text} />
      ))}
      <rect x="4" y="70" width="30" height="6" fill="currentColor" />
      <text x="115" y="72" font-size="4" fill="currentColor">
        Paint inside the boxes,
      </text>
      <text x="115" y="78" font-size="4" fill="currentColor">
        leave the rest bare.
      </text>
    </svg>
  );
}
