import { Button } from '../common/button.tsx';
import styles from './tool-row.module.css';
import type { Look } from './use-look.ts';

/** Other ways to look: touch a spot, turn the picture over. */
export function ToolRow({ look, canTouch }: { look: Look; canTouch: boolean }) {
  const { turn, touching, marks, moving } = look;
  const { upsideDown, mirrored } = turn.value;
  return (
    <fieldset class={styles.tools}>
      <legend class="spoken">Ways to look</legend>
      <Button
        aria-pressed={touching.value}
        disabled={!canTouch}
        onClick={() => {
          marks.value = [];
          moving.value = null;
          touching.value = !touching.value;
        }}
      >
        Touch for value
      </Button>
      <Button
        aria-pressed={upsideDown}
        onClick={() => {
          turn.value = { mirrored, upsideDown: !upsideDown };
        }}
      >
        Upside down
      </Button>
      <Button
        aria-pressed={mirrored}
        onClick={() => {
          turn.value = { upsideDown, mirrored: !mirrored };
        }}
      >
        Mirror
      </Button>
    </fieldset>
  );
}
