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
          Draw a line of waterproof black ink, as broad as a finger, and let it dry. Paint step 2
          again across it, on the line and on the paper above it, and leave the ends of the line
          bare. Nothing else tells as much: whether the paint hides, how it mixes, and how your
          camera sees the dark.
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

/** The boxes: a ladder of five, and one across a black line. 186 x 110 mm when printed on a page. */
function GuideDrawing({ name }: { name: string }) {
  return (
    <svg
      class={styles.drawing}
      viewBox="0 0 186 106"
      role="img"
      aria-label="Boxes for five steps, and one across a black line"
    >
      <text x="4" y="8" font-size="5" fill="currentColor">
        {name}
      </text>
      {ladder.map((text, n) => (
        <Box key={text} x={4 + 37 * n} y={14} text={text} />
      ))}
      <rect x="10" y="74" width="54" height="10" fill="currentColor" />
      <Box x={22} y={60} text="2 across the line" />
      <text x="78" y="72" font-size="4" fill="currentColor">
        Paint inside the boxes, leave the rest bare.
      </text>
      <text x="78" y="79" font-size="4" fill="currentColor">
        Go over a printed line with waterproof ink.
      </text>
    </svg>
  );
}
