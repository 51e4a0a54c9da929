import { areaShare, scaleOf, shapeOf } from '../../model/crop-box.ts';
import { scaledCrop, straightenedCrop } from '../../model/crop-moves.ts';
import { mostStraightening, straighteningOf } from '../../model/crop-turn.ts';
import { smallestScale } from '../../model/cut-limits.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import type { Crop } from '../../model/reference.ts';
import { Button } from '../common/button.tsx';
import { SliderRow } from '../common/slider-row.tsx';
import styles from './cut-choice.module.css';
import { straightenStep } from './cut-keys.ts';

interface CutChoiceProps {
  photo: PixelSize;
  crop: Crop;
  hintId: string;
  onMove: (crop: Crop) => void;
  onSettle: (crop: Crop) => void;
  /** A quarter turn: 1 clockwise, -1 the other way. */
  onTurn: (quarters: 1 | -1) => void;
  /** As much of the photo as the sheet allows, in its middle. */
  onLargest: () => void;
}

const leanInWords = (degrees: number): string => {
  const size = Math.abs(Math.round(degrees * 10) / 10);
  if (size === 0) return 'level';
  return `${size}° ${degrees > 0 ? 'to the right' : 'to the left'}`;
};

/** How large the cut is and how the photo is turned under it. */
export function CutChoice(props: CutChoiceProps) {
  const { photo, crop, hintId, onMove, onSettle, onTurn, onLargest } = props;
  const smallest = smallestScale(photo, shapeOf(photo, crop), crop.turn);
  const straightening = straighteningOf(crop.turn);
  return (
    <>
      <SliderRow
        label="Size of the cut"
        said={`${Math.round(areaShare(crop) * 100)} % of the photo`}
        min={Math.ceil(smallest * 100)}
        max={100}
        step={1}
        value={Math.round(scaleOf(photo, crop) * 100)}
        onMove={(percent) => onMove(scaledCrop(photo, crop, percent / 100))}
        onSettle={() => onSettle(crop)}
      />
      <SliderRow
        label="Straighten"
        said={leanInWords(straightening)}
        min={-mostStraightening}
        max={mostStraightening}
        step={straightenStep}
        value={straightening}
        onMove={(degrees) => onMove(straightenedCrop(photo, crop, degrees))}
        onSettle={() => onSettle(crop)}
      />
      <div class={styles.turns}>
        <Button onClick={() => onTurn(-1)}>Turn left</Button>
        <Button onClick={() => onTurn(1)}>Turn right</Button>
        <Button onClick={onLargest}>Largest</Button>
      </div>
      <p id={hintId} class={styles.hint}>
        Drag the cut, pull a corner or pinch. Keys on the picture: arrows move it (with Shift
        farther), + and − size it, [ and ] straighten, R turns.
      </p>
    </>
  );
}
