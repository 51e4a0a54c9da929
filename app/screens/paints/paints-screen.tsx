import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import {
  type PaletteWish,
  paletteWish,
  resizePalette,
  searchedFreely,
} from '../../core/decisions/wishes.ts';
import { largestPalette } from '../../core/limits.ts';
import { isOwned, tickedPaints } from '../../core/paint/own-box.ts';
import { deferral } from '../../core/words/cautions.ts';
import { formatCount, pluralize } from '../../core/words/numbers.ts';
import { madeFromInWords } from '../../core/words/paint/own-box.ts';
import {
  closenessInWords,
  otherChoicesInWords,
  reachInWords,
} from '../../core/words/palette/palette-offer.ts';
import type { PaletteCalls } from '../../state/painting/screen-calls.ts';
import type { Studio } from '../../state/painting/studio.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { hashOf, linkTo } from '../../state/router.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { Fold } from '../../ui/layout/fold.tsx';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { BoxPaints, ChosenPaints } from './chosen-paints.tsx';
import { ClassicStarts, OtherWays } from './other-ways.tsx';
import styles from './paints-screen.module.css';
import { SearchLine, usePalettes } from './use-palettes.tsx';

interface PaintsScreenProps {
  studio: Studio;
  ownBox: OwnBoxState;
  calls: PaletteCalls;
  paintingId: string;
}

/** The few to squeeze out with the job of each; behind a touch other choices, classics and the rest of her box. */
export function PaintsScreen({ studio, ownBox, calls, paintingId }: PaintsScreenProps) {
  useEffect(() => void ownBox.open(), [ownBox]);
  const halted = useSignal(false);
  const palettes = usePalettes(studio, ownBox, calls, halted.value);
  const plan = studio.plan.value;
  const work = studio.work.value;
  const cards = ownBox.cards.value;
  const box = ownBox.box.value;
  const wish = paletteWish(studio.painting.value?.decisions ?? []);
  const onWish = (next: PaletteWish): void => {
    halted.value = false;
    void studio.decide({ kind: 'palette', ...next });
  };
  const heading = useRef<HTMLHeadingElement>(null);
  // A whole palette taken: what comes of it is shown at the top.
  const onTake = (next: PaletteWish): void => {
    onWish(next);
    heading.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  };
  const inPalette = (id: string): boolean =>
    plan?.palette.some((entry) => entry.id === id) ?? false;
  const owned = cards.filter((card) => isOwned(box, card));
  const palette = plan?.palette ?? [];
  const rest = owned.filter(({ id }) => !inPalette(id));
  const judged = palettes.current ? palettes.offers : null;

  return (
    <PageLayout
      name="paints"
      top={
        <TopBar title="Paints" back="Wash plan" backTo={linkTo(paintingId, 'plan')}>
          <a class={buttonClass('quiet')} href={hashOf({ screen: 'box' })}>
            Your paint box
          </a>
        </TopBar>
      }
    >
      <section class={styles.section} aria-label="Chosen paints">
        <div class={styles.top}>
          <h2 class={styles.heading} ref={heading} tabIndex={-1}>
            Squeeze out these
          </h2>
          {plan && (
            <p class="quiet">
              {madeFromInWords(
                box,
                plan.palette.map(({ id }) => id),
              )}
            </p>
          )}
        </div>
        {studio.problem.value && <p role="alert">{studio.problem.value}</p>}
        {work && (
          <SearchLine
            said={work.stage === 'washes' ? 'Working out the washes' : 'Trying the paints'}
            part={work.part}
            onStop={() => {
              halted.value = true;
              studio.leave();
            }}
          />
        )}
        {halted.value && !work && (
          <div class={styles.halted}>
            <p role="status">Stopped. These are the paints from before your last choice.</p>
            <Button
              onClick={() => {
                halted.value = false;
                studio.again();
              }}
            >
              Go on
            </Button>
          </div>
        )}
        <ChosenPaints
          palette={palette}
          cards={cards}
          offer={judged?.current ?? null}
          wish={wish}
          onWish={onWish}
        />
        {judged && (
          <p>
            {closenessInWords(judged.current.meanDifference, null)}{' '}
            {reachInWords(judged.current.valuesShort, judged.remedy)}
          </p>
        )}
        <SizeChoice wish={wish} onWish={onWish} />
        {palettes.problem && <p role="alert">{palettes.problem}</p>}
        {palettes.part !== null && (
          <SearchLine
            said="Looking for other palettes"
            part={palettes.part}
            onStop={palettes.stop}
          />
        )}
        {palettes.stopped && (
          <p>
            <Button onClick={palettes.start}>Look for other palettes</Button>
          </p>
        )}
      </section>
      <section class={styles.folds} aria-label="Other paints">
        {palettes.offers && (
          <Fold title="Other choices" beside={otherChoicesInWords(palettes.offers)}>
            <OtherWays
              offers={palettes.offers}
              cards={cards}
              current={palettes.current}
              wish={wish}
              onWish={onTake}
            />
          </Fold>
        )}
        <Fold title="Start from a classic palette">
          <ClassicStarts owned={owned} wish={wish} onWish={onTake} />
        </Fold>
        <Fold title="The rest of your box" beside={formatCount(rest.length, 'paint')} late>
          <p class="quiet">
            The same name differs from maker to maker: brush a scrap first. {deferral}
          </p>
          <BoxPaints cards={rest} wish={wish} onWish={onWish} />
          {tickedPaints(box) && (
            <p>
              {formatCount(cards.length - owned.length, 'more paint')} in the list, not in your box.
            </p>
          )}
        </Fold>
      </section>
    </PageLayout>
  );
}

interface SizeChoiceProps {
  wish: PaletteWish;
  onWish: (wish: PaletteWish) => void;
}

/** How many paints the search may take; or, where she chose them herself, the way back to the search. */
function SizeChoice({ wish, onWish }: SizeChoiceProps) {
  if (wish.chosen)
    return (
      <div class={styles.choice}>
        <span>You chose these.</span>
        <Button onClick={() => onWish(searchedFreely(wish))}>Let the app choose again</Button>
      </div>
    );
  const least = Math.max(1, wish.must.length);
  return (
    <div class={styles.choice}>
      <span>At most</span>
      <Button
        aria-label="One paint fewer"
        disabled={wish.n <= least}
        onClick={() => onWish(resizePalette(wish, wish.n - 1))}
      >
        −
      </Button>
      <output aria-live="polite">{wish.n}</output>
      <Button
        aria-label="One paint more"
        disabled={wish.n >= largestPalette}
        onClick={() => onWish(resizePalette(wish, wish.n + 1))}
      >
        +
      </Button>
      <span>{pluralize(wish.n, 'paint')}</span>
      {wish.n > 1 && wish.n === wish.must.length && (
        <span class="quiet">You asked for all {wish.n} of them: fewer by letting one go.</span>
      )}
    </div>
  );
}
