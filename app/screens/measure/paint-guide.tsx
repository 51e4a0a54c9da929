import { Button } from '../../ui/controls/button.tsx';
import styles from './paint-guide.module.css';

/** What to paint and how to photograph it; printed, a page with boxes to paint in. */
export function PaintGuide({ name }: { name: string }) {
  return (
    <div class={styles.guide}>
      <ol class={styles.steps}>
        <li>
          On your usual white paper paint five steps of {name} side by side, not touching. Step 1 is
          thick as cream. Each next step is one brush of the last puddle and one of clean water:
          half as strong.
        </li>
        <li>
          Better still, rule a line of waterproof black ink as broad as a finger, and let it dry.
          Paint step 2 again across it, on the line and on the paper above; leave the ends of the
          line bare. It tells whether the paint hides, how it mixes and how your camera sees darks.
        </li>
        <li>Let it dry right through. Leave two centimetres of bare paper on all sides.</li>
        <li>
          Photograph it flat, from straight above, in open shade or under an overcast sky: no flash,
          no shadow of yours. Fill the frame with the sheet.
        </li>
      </ol>
      <GuideDrawing name={name} />
      <div class={styles.noPrint}>
        <Button onClick={() => window.print()}>Print the boxes to paint in</Button>
      </div>
    </div>
  );
}

const ladder = ['1 cream', '2', '3', '4', '5 tea'];
const notes = [
  'Paint inside the boxes,',
  'leave the rest bare. Go over',
  'a printed line in',
  'waterproof ink.',
];

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
      <text x={x + 15} y={y + 34} font-size="7" text-anchor="middle" fill="currentColor">
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
      <text x="4" y="8" font-size="7" fill="currentColor">
        {name}
      </text>
      {ladder.map((text, n) => (
        <Box key={text} x={4 + 37 * n} y={14} text={text} />
      ))}
      <rect x="10" y="74" width="54" height="10" fill="currentColor" />
      <Box x={22} y={60} text="2 over black" />
      {notes.map((text, n) => (
        <text key={text} x="78" y={68 + 10 * n} font-size="7" fill="currentColor">
          {text}
        </text>
      ))}
    </svg>
  );
}
