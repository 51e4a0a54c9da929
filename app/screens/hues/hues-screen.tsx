import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Lab } from '../../core/colour/lab.ts';
import type { ColourWish } from '../../core/decisions/plan-wishes.ts';
import { lastDecision } from '../../core/decisions/standing-decisions.ts';
import { inWishedColours, paintOfFamilies } from '../../core/decisions/wished-colours.ts';
import { isOwned } from '../../core/paint/own-box.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { retargeted, toneRange } from '../../core/reading/tone-range.ts';
import { reachSentence } from '../../core/words/decisions/wished-colours.ts';
import { slotLayer, withoutHue } from '../../drawing/layers.ts';
import type { Studio } from '../../state/painting/studio.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { type DecisionContext, DecisionScreen } from '../../ui/layout/decision-screen.tsx';
import { ValueHelp } from '../../ui/mixes/value-help.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import { FamilyHues, PaintPicker } from './family-hues.tsx';
import styles from './hues-screen.module.css';

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
  const owned = ownBox.cards.value.filter((card) => isOwned(ownBox.box.value, card));
  const decide = (next: ColourWish): void => {
    looking.value = next.mode === 'photo' ? null : next.mode;
    void studio.note({ kind: 'colours', wish: next });
  };
  return (
    <DecisionScreen
      studio={studio}
      paintingId={paintingId}
      name="hues"
      title="Colour scheme"
      kinds={['colours']}
      picture={(context) => <HuesPicture {...context} wish={wish} cards={ownBox.cards.value} />}
      panel={({ seen }) => {
        const paints = paintOfFamilies(wish, seen.reading.families);
        return (
          <div class="stack">
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
            <ValueHelp />
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

interface HuesPictureProps extends DecisionContext {
  wish: ColourWish;
  cards: readonly PaintCard[];
}

/** The picture in the colours she wants; a touch takes the hue out, to see that the values stay. */
function HuesPicture({ seen, wish, cards }: HuesPictureProps) {
  const grey = useSignal(false);
  const layers = useMemo(() => {
    const colours = previewColours(seen.reading, wish, cards);
    return {
      colours: slotLayer(seen.slotMap, colours),
      values: slotLayer(seen.slotMap, withoutHue(colours)),
    };
  }, [seen, cards, JSON.stringify(wish)]);
  return (
    <Picture
      label={grey.value ? 'The values of the picture' : 'The picture in these colours'}
      tapLabel={grey.value ? 'Tap for colour' : 'Tap for grey'}
      size={seen.reading.raster}
      layers={layers}
      show={grey.value ? 'values' : 'colours'}
      tapShows={grey.value ? 'colours' : 'values'}
      onTap={() => {
        grey.value = !grey.value;
      }}
    />
  );
}

/**
 * Colour of every slot on the sheet in the hues she wants, by the ladders of her paints; whites are paper. With
 * one paint the range of values is its own, as the plan has it.
 */
export function previewColours(
  { slots: read, families, range }: Pick<Reading, 'slots' | 'families' | 'range'>,
  wish: ColourWish,
  cards: readonly PaintCard[],
): Lab[] {
  const paper: Lab = [range.paper, 0, 0];
  const only = wish.mode === 'one' && cards.find(({ id }) => id === wish.paint);
  const darkest = only && Math.min(...only.ladder.map(([lightness]) => lightness));
  const slots = darkest
    ? retargeted(read, toneRange(range.mode, range.lo, range.hi, darkest, range.paper))
    : read;
  const colours = inWishedColours(
    slots.map(({ family, target }) => ({ family, colour: target })),
    paintOfFamilies(wish, families),
    (paint) => {
      const card = cards.find(({ id }) => id === paint);
      return card && [paper, ...card.ladder];
    },
  );
  return colours.map((colour, i) => (slots[i]?.reserve ? paper : colour));
}

interface ReachProps {
  reading: Reading;
  /** Family id -> paint id. */
  paints: ReadonlyMap<number, string>;
  cards: readonly PaintCard[];
}

/** Whether each paint she chose gets as dark as its shapes are to be. */
function Reach({ reading, paints, cards }: ReachProps) {
  const wanted = new Map<string, number>();
  for (const { family, target, reserve } of reading.slots) {
    const paint = paints.get(family);
    if (paint === undefined || reserve) continue;
    wanted.set(paint, Math.min(wanted.get(paint) ?? 100, target[0]));
  }
  return (
    <div role="status" class="stack">
      {[...wanted].map(([paint, lightness]) => {
        const card = cards.find(({ id }) => id === paint);
        return (
          card && (
            <p key={paint} class={styles.sentence}>
              {reachSentence(card.name, card.ladder, lightness)}
            </p>
          )
        );
      })}
    </div>
  );
}
