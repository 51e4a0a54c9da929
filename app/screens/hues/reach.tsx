import type { PaintCard } from '../../model/paint.ts';
import { reachSentence } from '../../model/reach-sentence.ts';
import type { Reading } from '../../model/reading.ts';
import styles from './hues-panel.module.css';

interface ReachProps {
  reading: Reading;
  /** Family id -> paint id. */
  paints: ReadonlyMap<number, string>;
  cards: readonly PaintCard[];
}

/** Whether each paint she chose gets as dark as its shapes are to be. */
export function Reach({ reading, paints, cards }: ReachProps) {
  const wanted = new Map<string, number>();
  for (const { family, target, reserve } of reading.slots) {
    const paint = paints.get(family);
    if (paint === undefined || reserve) continue;
    wanted.set(paint, Math.min(wanted.get(paint) ?? 100, target[0]));
  }
  return (
    <div role="status" class={styles.reach}>
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
