import { useEffect } from 'preact/hooks';
import { paletteWish } from '../../model/wishes.ts';
import type { OwnBoxState } from '../../state/own-box.ts';
import { hashOf, linkTo } from '../../state/route.ts';
import type { Studio } from '../../state/studio.ts';
import { Button, buttonClass } from '../common/button.tsx';
import { TopBar } from '../common/top-bar.tsx';
import { PaintRow } from './paint-row.tsx';
import styles from './paints-screen.module.css';

interface PaintsScreenProps {
  studio: Studio;
  ownBox: OwnBoxState;
  paintingId: string;
}

/** The chosen few on top with what each is for, then the whole box, each paint with its ladder. */
export function PaintsScreen({ studio, ownBox, paintingId }: PaintsScreenProps) {
  useEffect(() => void ownBox.open(), [ownBox]);
  const plan = studio.plan.value;
  const box = ownBox.cards.value;
  const wish = paletteWish(studio.painting.value?.decisions ?? []);
  const cardOf = (id: string) => box.find((card) => card.id === id);
  const change = (next: Partial<typeof wish>): void =>
    void studio.decide({ kind: 'palette', ...wish, ...next });
  const without = (list: readonly string[], id: string): string[] => list.filter((i) => i !== id);

  return (
    <main class={styles.page} data-screen="paints">
      <header class={styles.top}>
        <TopBar title="Paints" back="Wash plan" backTo={linkTo(paintingId, 'plan')} />
      </header>
      <section class={styles.section} aria-label="Chosen paints">
        <h2 class={styles.heading}>For this painting</h2>
        <p>
          The fewest paints of the box that reach its colours and its darkest dark.{' '}
          {studio.work.value && <span role="status">Trying the paints again …</span>}
        </p>
        <div class={styles.choice}>
          <span>At most</span>
          <Button
            aria-label="One paint fewer"
            disabled={wish.n <= 1}
            onClick={() => change({ n: wish.n - 1 })}
          >
            −
          </Button>
          <output aria-live="polite">{wish.n}</output>
          <Button
            aria-label="One paint more"
            disabled={wish.n >= 7}
            onClick={() => change({ n: wish.n + 1 })}
          >
            +
          </Button>
          <span>paints</span>
        </div>
        <ul class={styles.rows}>
          {plan?.palette.map((entry) => {
            const card = cardOf(entry.id);
            return (
              card && (
                <PaintRow key={entry.id} card={card} note={entry.why}>
                  <Button
                    onClick={() =>
                      change({
                        exclude: [...wish.exclude, entry.id],
                        must: without(wish.must, entry.id),
                      })
                    }
                  >
                    Leave out
                  </Button>
                </PaintRow>
              )
            );
          })}
        </ul>
      </section>
      <section class={styles.section} aria-label="The paint box">
        <h2 class={styles.heading}>The box</h2>
        <a class={buttonClass('quiet')} href={hashOf({ screen: 'box' })}>
          Your paint box
        </a>
        <p class={styles.quiet}>
          Pigments with published optics. The same name differs from maker to maker: brush a scrap
          first. For anything about health, the label and its safety data sheet come first.
        </p>
        <ul class={styles.rows}>
          {box
            .filter(({ id }) => !plan?.palette.some((entry) => entry.id === id))
            .map((card) => {
              const out = wish.exclude.includes(card.id);
              return (
                <PaintRow key={card.id} card={card} out={out}>
                  {out ? (
                    <Button onClick={() => change({ exclude: without(wish.exclude, card.id) })}>
                      Allow again
                    </Button>
                  ) : (
                    <Button
                      onClick={() =>
                        change({
                          must: [...wish.must, card.id],
                          exclude: without(wish.exclude, card.id),
                        })
                      }
                      disabled={wish.must.length >= wish.n}
                    >
                      Use it
                    </Button>
                  )}
                </PaintRow>
              );
            })}
        </ul>
      </section>
    </main>
  );
}
