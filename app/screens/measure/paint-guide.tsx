import { Button } from '../../ui/controls/button.tsx';
import styles from './paint-guide.module.css';

/** What to paint and how to photograph it; printed, a page with boxes to paint in. */
export function PaintGuide({ name }: { name: string }) {
  return (
    <div class={styles.guide}>
      <ol class={styles.steps}>
        <li>
          On your usual white paper paint five steps of {name} beside each other, not touching. Step
          1 is thick as cream. For each further step take one brush of the puddle before and the
          same brush of clean water: each is twice as thin.
        </li>
        <li>
          If you can, paint step 2 across a waterproof black line as well, mix it half and half with
          white, and half and half with a paint you know. That tells how it hides and how it mixes.
        </li>
        <li>Let it dry right through. Leave two centimetres of bare paper on all sides.</li>
        <li>
          Photograph it flat from straight above, in open shade or under an overcast sky, without
          flash and without your own shadow. Fill the frame with the sheet.
        </li>
      </ol>
      <GuideDrawing name={name} />
      <div class={styles.noPrint}>
        <Button onClick={() => window.print()}>Print the boxes to paint in</Button>
      </div>
    </div>
  );
}

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
function GuideDrawing({ name }: { name: string }) {
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
