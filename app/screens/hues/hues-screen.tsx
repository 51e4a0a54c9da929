import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { ColourWish } from '../../model/colour-wish.ts';
import { isOwned } from '../../model/own-box.ts';
import { lastDecision } from '../../model/standing-decisions.ts';
import { paintOfFamilies } from '../../model/wished-colours.ts';
import type { OwnBoxState } from '../../state/own-box.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import { DecidePlace } from '../common/decide-place.tsx';
import { ThreeRoads } from '../common/three-roads.tsx';
import { FamilyHues } from './family-hues.tsx';
import styles from './hues-panel.module.css';
import { HuesPicture } from './hues-picture.tsx';
import { PaintPicker } from './paint-picker.tsx';
import { Reach } from './reach.tsx';

interface HuesScreenProps {
  studio: Studio;
  ownBox: OwnBoxState;
  paintingId: string;
}

const modes: readonly (readonly [ColourWish['mode'], string])[] = [
  ['photo', 'As the photo'],
  ['own', 'My colours'],
  ['one', 'One paint'],
];

const asPhoto: ColourWish = { mode: 'photo' };

/** Other colours for the same values: a hue of her box for each colour, or one paint for all. */
export function HuesScreen({ studio, ownBox, paintingId }: HuesScreenProps) {
  useEffect(() => void ownBox.open(), [ownBox]);
  const wish = lastDecision(studio.painting.value?.decisions ?? [], 'colours')?.wish ?? asPhoto;
  /** What she looks at without having chosen a paint for it yet. */
  const looking = useSignal<ColourWish['mode'] | null>(null);
  const mode = looking.value ?? wish.mode;
  const owned = ownBox.cards.value.filter(({ id }) => isOwned(ownBox.box.value, id));
  const decide = (next: ColourWish): void => {
    looking.value = next.mode === 'photo' ? null : next.mode;
    void studio.note({ kind: 'colours', wish: next });
  };
  return (
    <DecidePlace
      studio={studio}
      paintingId={paintingId}
      name="hues"
      title="Which colours"
      kinds={['colours']}
      picture={(now) => <HuesPicture {...now} wish={wish} cards={ownBox.cards.value} />}
      panel={({ seen }) => {
        const paints = paintOfFamilies(wish, seen.reading.families);
        return (
          <div class={styles.panel}>
            <ChoiceRow
              label="The colours of the painting"
              choices={modes}
              chosen={mode}
              onChoose={(next) => {
                if (next === 'photo') decide(asPhoto);
                else looking.value = next;
              }}
            />
            <p class={styles.lead}>{leads[mode]}</p>
            {ownBox.problem.value && <p role="alert">{ownBox.problem.value}</p>}
            <Reach reading={seen.reading} paints={paints} cards={ownBox.cards.value} />
            {mode === 'one' && (
              <PaintPicker
                cards={owned}
                chosen={wish.mode === 'one' ? wish.paint : null}
                onChoose={(paint) => decide({ mode: 'one', paint })}
              />
            )}
            {mode === 'own' && (
              <FamilyHues reading={seen.reading} wish={wish} cards={owned} onWish={decide} />
            )}
            <ThreeRoads />
          </div>
        );
      }}
    />
  );
}

const leads: Record<ColourWish['mode'], string> = {
  photo: 'The paints are chosen to come near the colours of the photo.',
  own: 'Touch a colour of the picture, then the paint whose hue it is to have. The values stay.',
  one: 'All in one paint: only water makes the values. The values stay.',
};
