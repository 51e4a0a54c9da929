import { useEffect } from 'preact/hooks';
import { memoizeByObject } from '../../core/numeric/memo.ts';
import { ownPaints, tickedPaints, withRenameSeen, withTicks } from '../../core/paint/own-box.ts';
import { careWithOldTubes, careWithPaint, deferral } from '../../core/words/cautions.ts';
import { boxInWords, renamedInWords } from '../../core/words/paint/own-box.ts';
import { measuredOnInWords } from '../../core/words/paint/paint-words.ts';
import type { App } from '../../state/create-app.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { createPaintDrafts, type PaintDraftsState } from '../../state/paints/paint-drafts.ts';
import { hashOf, type PaintingRoute } from '../../state/router.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { BoxList } from './box-list.tsx';
import styles from './box-screen.module.css';
import { OwnPaints } from './own-paints.tsx';
import { StrengthList } from './strength-note.tsx';

interface BoxScreenProps {
  ownBox: OwnBoxState;
  paintDrafts: PaintDraftsState;
  /** The place of a painting she came from; the way back leads there. */
  cameFrom: PaintingRoute | null;
}

/** The paints she owns, for all paintings: ticks in the built-in list, and paints of her own. */
export function BoxScreen({ ownBox, paintDrafts, cameFrom }: BoxScreenProps) {
  useEffect(() => {
    void ownBox.open();
    void paintDrafts.open();
  }, [ownBox, paintDrafts]);
  const box = ownBox.box.value;
  const cards = ownBox.cards.value;
  const ticked = tickedPaints(box);
  const problem = ownBox.problem.value ?? paintDrafts.problem.value;
  const own = new Set(ownPaints(box).map(({ id }) => id));
  // Her own are hers already: they stay so when the usual ones are ticked.
  const usual = cards
    .filter(({ id, placeAmongOwned }) => placeAmongOwned !== undefined || own.has(id))
    .map(({ id }) => id);
  const toPaints = cameFrom?.screen === 'paints';

  return (
    <PageLayout
      name="box"
      top={
        <TopBar
          title="Your paint box"
          back={toPaints ? 'Paints' : cameFrom ? 'Back' : 'Paintings'}
          backTo={hashOf(cameFrom ?? { screen: 'start' })}
        />
      }
    >
      {problem && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {box.renamed?.map((id) => (
        <div key={id} class={styles.told} role="status">
          <p>{renamedInWords(id)}</p>
          <Button onClick={() => void ownBox.change((before) => withRenameSeen(before, id))}>
            I have read it
          </Button>
        </div>
      ))}
      <section class={styles.section} aria-label="What you own">
        <p class={styles.lead} role="status">
          {cards.length > 0 && boxInWords(box, cards)}
        </p>
        <div class={styles.actions}>
          <Button
            disabled={cards.length === 0}
            onClick={() =>
              void ownBox.change((before) =>
                withTicks(before, [...new Set([...(before.owned ?? []), ...usual])]),
              )
            }
          >
            Tick what most own
          </Button>
          <Button
            disabled={!ticked}
            onClick={() => void ownBox.change((before) => withTicks(before, []))}
          >
            Untick all
          </Button>
        </div>
      </section>
      <BoxList ownBox={ownBox} cards={cards.filter(({ id }) => !own.has(id))} />
      <OwnPaints
        ownBox={ownBox}
        paintDrafts={paintDrafts}
        cards={cards.filter(({ id }) => own.has(id))}
      />
      <StrengthList ownBox={ownBox} />
      <section class={styles.section} aria-label="Good to know">
        <h2 class={styles.heading}>Good to know</h2>
        <p>
          {careWithPaint} {careWithOldTubes} {deferral}
        </p>
        <p>Properties are as commonly given: check your tube.</p>
        {cards.length > 0 && <p>{measuredOnInWords(cards)}</p>}
        <p>
          <a class={buttonClass()} href={hashOf({ screen: 'copies', what: 'box' })}>
            Hand on your box
          </a>
        </p>
      </section>
    </PageLayout>
  );
}

const draftsOf = memoizeByObject(createPaintDrafts);

/** The box with the paints being typed: they are looked after only from when it is first opened. */
export function BoxPlace({ app }: { app: App }) {
  return (
    <BoxScreen
      ownBox={app.ownBox}
      paintDrafts={draftsOf(app.paintNeeds)}
      cameFrom={app.router.cameFrom.value}
    />
  );
}
