import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { memoizeByObject } from '../../core/numeric/memo.ts';
import type { App } from '../../state/create-app.ts';
import { createMixPage } from '../../state/paints/mix-page.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { createPaintMeasuring, type PaintMeasuring } from '../../state/paints/paint-measuring.ts';
import { hashOf } from '../../state/router.ts';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { MeasureFrames } from './measure-frames.tsx';
import styles from './measure-screen.module.css';
import { MixPageScreen } from './mix-page-screen.tsx';
import { PaintGuide } from './paint-guide.tsx';
import { PhotoSection } from './photo-section.tsx';

interface MeasureScreenProps {
  ownBox: OwnBoxState;
  measuring: PaintMeasuring;
  paintId: string;
  onKept: () => void;
}

/** A paint measured from a photo of its painted steps: what to paint, the photo, the frames, the result. */
export function MeasureScreen({ ownBox, measuring, paintId, onKept }: MeasureScreenProps) {
  const opened = useSignal(false);
  useEffect(() => {
    void ownBox.open();
    void measuring.open(paintId).then(() => {
      opened.value = true;
    });
  }, [ownBox, measuring, paintId, opened]);
  const card = ownBox.cards.value.find(({ id }) => id === paintId);
  const photo = measuring.photo.value;
  const problem = measuring.problem.value ?? ownBox.problem.value;
  const kept = (measuring.drafts.value[paintId] ?? []).length > 0;

  return (
    <PageLayout
      name="measure"
      class={styles.page}
      top={<TopBar title="Measure a paint" back="Paint box" backTo={hashOf({ screen: 'box' })} />}
    >
      {opened.value && ownBox.cards.value.length > 0 && !card && (
        <p>This paint is not in the box any more. Go back to the paint box and choose another.</p>
      )}
      {card && (
        <>
          <section class={styles.section} aria-label="What to paint">
            <h2 class={styles.heading}>{card.name}</h2>
            {!photo && (
              <p class={styles.noPrint}>
                Tubes of one name differ from maker to maker. Measure yours from a photo, and the
                app mixes with the paint you have.
              </p>
            )}
            <details open={!photo}>
              <summary class={styles.summary}>What to paint</summary>
              <PaintGuide name={card.name} />
            </details>
            {card.optics?.from === 'measured' && (
              <p class={styles.noPrint}>
                <a href={hashOf({ screen: 'measure', paintId: pageId })}>
                  Put it right by a page of mixes
                </a>
              </p>
            )}
          </section>
          <PhotoSection
            hasPhoto={photo !== null}
            hint={
              !photo &&
              kept &&
              'Your frames are kept, the photo is not: choose the same photo again.'
            }
            work={measuring.work.value}
            problem={problem}
            onFile={(file) => void measuring.choosePhoto(file)}
          >
            {photo && (
              <MeasureFrames
                card={card}
                cards={ownBox.cards.value}
                measuring={measuring}
                photo={photo}
                onKept={onKept}
              />
            )}
          </PhotoSection>
        </>
      )}
    </PageLayout>
  );
}

const measuringOf = memoizeByObject(createPaintMeasuring);
const mixPageOf = memoizeByObject(createMixPage);

/** Stands in the place of a paint's id where a page of mixes is measured. */
const pageId = 'page';

/** The measuring of a paint, or of a page of mixes: it is looked after only from when it is first opened. */
export function MeasurePlace({ app, paintId }: { app: App; paintId: string }) {
  if (paintId === pageId) {
    return (
      <MixPageScreen
        ownBox={app.ownBox}
        mixPage={mixPageOf(app.paintNeeds)}
        onKept={() => app.router.go({ screen: 'box' })}
      />
    );
  }
  return (
    <MeasureScreen
      ownBox={app.ownBox}
      measuring={measuringOf(app.paintNeeds)}
      paintId={paintId}
      onKept={() => app.router.go({ screen: 'box' })}
    />
  );
}
