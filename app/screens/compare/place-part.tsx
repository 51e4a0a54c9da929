import { useSignal } from '@preact/signals';
import {
  refusalInWords,
  surenessInWords,
  tipInWords,
} from '../../core/words/compare/compare-words.ts';
import type { Comparing } from '../../state/session/comparing.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { movePlace } from '../../ui/pointer/stage-keys.ts';
import styles from './compare-screen.module.css';
import { CornerStage, cornerNames, longCornerStep, withCorner } from './corner-stage.tsx';

interface PlaceState {
  readonly chosen: number;
  readonly sets: 'corners' | 'bare';
}

/** Which corner is moved and what a touch sets: shared by the photo and what stands beside it. */
export const usePlaceState = () => useSignal<PlaceState>({ chosen: 0, sets: 'corners' });

export type PlaceSignal = ReturnType<typeof usePlaceState>;

interface PlaceProps {
  comparing: Comparing;
  place: PlaceSignal;
}

/** The photo with its corners and the bare paper she showed. */
export function PlacePicture({ comparing, place }: PlaceProps) {
  const photo = comparing.found.value?.photo;
  const { bare } = comparing.draft.value;
  if (!photo) return null;
  return (
    <CornerStage
      photo={photo}
      corners={comparing.corners.value}
      bare={bare}
      sets={place.value.sets}
      chosen={place.value.chosen}
      onChoose={(chosen) => {
        if (place.peek().chosen !== chosen) place.value = { ...place.peek(), chosen };
      }}
      onCorners={(corners) => comparing.change({ corners })}
      onBare={(spot) => comparing.change({ bare: [...bare, spot] })}
    />
  );
}

const setting = [
  ['corners', 'Corners'],
  ['bare', 'Bare paper'],
] as const;

const corners = cornerNames.map((name, n) => [String(n), `${n + 1}`, name] as const);

const moves = [
  ['←', 'left', [-1, 0]],
  ['↑', 'up', [0, -1]],
  ['↓', 'down', [0, 1]],
  ['→', 'right', [1, 0]],
] as const;

/** Why nothing is judged, how sure the place is, and buttons for all that a finger can do. */
export function PlacePanel({ comparing, place }: PlaceProps) {
  const comparison = comparing.found.value?.comparison;
  const { sets, chosen } = place.value;
  const { bare } = comparing.draft.value;
  const at = comparing.corners.value;
  const turn = (): void => {
    const [a, b, c, d] = at;
    comparing.change({ corners: [b, c, d, a] });
  };
  return (
    <div class={styles.panel}>
      {comparison?.refused ? (
        <p class={styles.refused} role="alert">
          {refusalInWords(comparison.refused)}
        </p>
      ) : (
        <p role="status">{surenessInWords(comparison?.place ?? null)}</p>
      )}
      <ChoiceRow
        label="What a touch sets"
        choices={setting}
        chosen={sets}
        onChoose={(next) => {
          place.value = { ...place.value, sets: next };
        }}
      />
      {sets === 'corners' ? (
        <>
          <p class="quiet">
            Drag each ring to a corner of the painting itself, inside any border or tape. Ring 1
            goes to its upper left, whichever way round the photo is.
          </p>
          <ChoiceRow
            label="Corner to move"
            choices={corners.map(([value, text]) => [value, text] as const)}
            chosen={String(chosen)}
            onChoose={(next) => {
              place.value = { ...place.value, chosen: Number(next) };
            }}
          />
          <div class={styles.moves}>
            {moves.map(([sign, word, direction]) => (
              <Button
                key={word}
                aria-label={`Corner ${chosen + 1} ${word}`}
                onClick={() => {
                  const corner = at[chosen] ?? at[0];
                  const moved = movePlace(corner, direction, longCornerStep / 2);
                  comparing.change({ corners: withCorner(at, chosen, moved) });
                }}
              >
                {sign}
              </Button>
            ))}
          </div>
          <div class={styles.row}>
            <Button onClick={turn}>Turn the picture round</Button>
            <Button
              disabled={comparing.draft.value.corners === null}
              onClick={() => comparing.change({ corners: null })}
            >
              Find them again
            </Button>
          </div>
        </>
      ) : (
        <>
          <p class="quiet">
            Touch bare paper on the sheet or its border: what is white is judged by it.
          </p>
          <div class={styles.row}>
            <Button
              disabled={bare.length === 0}
              onClick={() => comparing.change({ bare: bare.slice(0, -1) })}
            >
              Take the last spot away
            </Button>
          </div>
        </>
      )}
      {comparison?.refused === null && comparison.tips.length > 0 && (
        <ul class={styles.tips}>
          {comparison.tips.map((tip) => (
            <li key={tip}>{tipInWords(tip)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
