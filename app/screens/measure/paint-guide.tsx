import { Button } from '../common/button.tsx';
import { GuideDrawing } from './guide-drawing.tsx';
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
