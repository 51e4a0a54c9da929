import type { PixelSize } from '../../core/raster/size.ts';
import {
  areaShare,
  movedCrop,
  resizedCrop,
  scaledCrop,
  scaleOf,
  shapeOf,
  straightenedCrop,
} from '../../core/reference/move-crop.ts';
import {
  type Crop,
  mostStraightening,
  smallestScale,
  straighteningOf,
} from '../../core/reference/reference.ts';
import { Button } from '../../ui/controls/button.tsx';
import { SliderRow } from '../../ui/controls/slider-row.tsx';
import { arrowDirections } from '../../ui/pointer/stage-keys.ts';
import styles from './cut-choice.module.css';

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
        label="Size of the crop"
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
      <p id={hintId} class="quiet">
        Drag the opening, pull a corner of the cards or pinch.
        <span class="keys">
          {' '}
          By keys: arrows move it, with Shift farther, + and − size it, comma and full stop
          straighten it, T turns it.
        </span>
      </p>
    </>
  );
}

/** One press moves by a fiftieth of the cut, with Shift by a fifth. */
const shortStep = 0.02;
const longStep = 0.2;
const sizeStep = 1.05;
/** One press of comma or full stop, degrees. */
const straightenStep = 0.5;

const roundToStep = (degrees: number): number =>
  Math.round(degrees / straightenStep) * straightenStep;

/** The cut after a key, or null where the key means nothing to it. */
export function moveCutByKey(
  photo: PixelSize,
  crop: Crop,
  key: string,
  shift: boolean,
): Crop | null {
  const direction = arrowDirections[key];
  if (direction) {
    const step = shift ? longStep : shortStep;
    const right = direction[0] * step * crop.size[0] * photo.width;
    return movedCrop(photo, crop, right, direction[1] * step * crop.size[1] * photo.height);
  }
  const straightening = straighteningOf(crop.turn);
  switch (key) {
    case '+':
    case '=': // the same key without Shift
      return resizedCrop(photo, crop, sizeStep);
    case '-':
    case '−':
      return resizedCrop(photo, crop, 1 / sizeStep);
    case ',':
      return straightenedCrop(photo, crop, roundToStep(straightening - straightenStep));
    case '.':
      return straightenedCrop(photo, crop, roundToStep(straightening + straightenStep));
    default:
      return null;
  }
}
