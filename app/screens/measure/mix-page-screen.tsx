import { useEffect } from 'preact/hooks';
import { fewestSteps } from '../../core/paint/measure/paint-measure.ts';
import { mostOnPage, squaresOfPage } from '../../core/paint/measure/refine-paints.ts';
import { isOwned } from '../../core/paint/own-box.ts';
import { changesInWords } from '../../core/words/paint/measured-paint.ts';
import type { MixPage } from '../../state/paints/mix-page.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { hashOf } from '../../state/router.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import boxRow from '../box/box-row.module.css';
import { newFrame } from './measure-frames.tsx';
import styles from './measure-screen.module.css';
import guideStyles from './paint-guide.module.css';
import { PatchStage } from './patch-stage.tsx';
import { PhotoSection } from './photo-section.tsx';

interface MixPageScreenProps {
  ownBox: OwnBoxState;
  mixPage: MixPage;
  onKept: () => void;
}

/** A page of one-to-one mixes: which paints, what to paint, the photo, what changes in her measured paints. */
export function MixPageScreen({ ownBox, mixPage, onKept }: MixPageScreenProps) {
  useEffect(() => {
    void ownBox.open();
  }, [ownBox]);
  const { cards, box } = ownBox;
  const chosen = mixPage.chosen.value;
  const photo = mixPage.photo.value;
  const frames = mixPage.frames.value;
  const refined = mixPage.result.value;
  const problem = mixPage.problem.value ?? ownBox.problem.value;
  const busy = mixPage.work.value !== null;
  const measured = cards.value.filter(({ optics }) => optics !== undefined);
  const others = cards.value.filter((card) => !card.optics && isOwned(box.value, card));
  const nameOf = (id: string): string => cards.value.find((card) => card.id === id)?.name ?? '';
  const squares = squaresOfPage(chosen).map((ids) => ids.map(nameOf).join(' + '));

  return (
    <PageLayout
      name="mix-page"
      class={styles.page}
      top={<TopBar title="A page of mixes" back="Paint box" backTo={hashOf({ screen: 'box' })} />}
    >
      <section class={styles.section} aria-label="What to paint">
        <p class={styles.noPrint}>
          Paint a few paints each by itself, and every two of them mixed one to one. A photo of the
          page puts the paints you measured right by how they really mix. Choose two to six.
        </p>
        {measured.length === 0 && (
          <p>None of your paints is measured yet. Measure one from its steps first.</p>
        )}
        <fieldset class={`${styles.paints} ${styles.noPrint}`}>
          <legend>Paints on the page</legend>
          {[...measured, ...others].map(({ id, name }) => (
            <label key={id} class={styles.tick}>
              <input
                type="checkbox"
                class={boxRow.box}
                checked={chosen.includes(id)}
                disabled={!chosen.includes(id) && chosen.length >= mostOnPage}
                onChange={(event) => mixPage.choose(id, event.currentTarget.checked)}
              />
              <span class={styles.name}>{name}</span>
            </label>
          ))}
        </fieldset>
        {chosen.length >= fewestSteps && (
          <>
            <p>
              Mix each square from equal strips of tube paint, thick as milk. Paint each paint by
              itself, then with every later one, row by row as drawn. Let it dry, and photograph it
              flat in even light with bare paper all round.
            </p>
            <PageDrawing names={chosen.map(nameOf)} />
            <div class={styles.noPrint}>
              <Button onClick={() => window.print()}>Print the squares to paint in</Button>
            </div>
          </>
        )}
      </section>
      {chosen.length >= fewestSteps && (
        <PhotoSection
          hasPhoto={photo !== null}
          work={mixPage.work.value}
          problem={problem}
          onFile={(file) => void mixPage.choosePhoto(file)}
        >
          {photo && (
            <>
              <PatchStage
                photo={photo}
                draft={frames}
                inWords={(patch) => squares[frames.indexOf(patch)] ?? null}
                onChange={mixPage.place}
              />
              <div class={styles.actions}>
                <Button onClick={() => mixPage.place([...frames, { ...newFrame }])}>
                  Add a frame
                </Button>
                <Button
                  look={refined ? 'plain' : 'main'}
                  disabled={busy}
                  onClick={() => void mixPage.measure()}
                >
                  Measure
                </Button>
              </div>
            </>
          )}
          {refined && (
            <>
              <ul data-testid="refined">
                {refined.map(({ id, told }) => (
                  <li key={id}>{changesInWords(told)}</li>
                ))}
              </ul>
              <div class={styles.actions}>
                <Button
                  look="main"
                  onClick={() => void mixPage.keep().then((kept) => kept && onKept())}
                >
                  Keep it
                </Button>
              </div>
            </>
          )}
        </PhotoSection>
      )}
    </PageLayout>
  );
}

/** A square for each paint and each pair, 186 mm wide when printed. */
function PageDrawing({ names }: { names: readonly string[] }) {
  const pitch = 186 / names.length;
  const side = Math.min(24, pitch - 7);
  const longest = Math.max(...names.map(({ length }) => length)) + 2;
  // As large as the longest name has room for, within what can be read and what the page holds, mm.
  const letter = Math.min(6, Math.max(2.6, pitch / (0.6 * longest)));
  const down = side + 3 + 2.6 * letter;
  return (
    <svg
      class={guideStyles.drawing}
      viewBox={`0 0 186 ${down * names.length}`}
      role="img"
      aria-label="Squares for each paint and each pair"
    >
      {names.flatMap((one, row) =>
        names.slice(row).map((two, n) => {
          const [x, y] = [n * pitch + 2, row * down + 2];
          return (
            <g key={`${row} ${n}`} fill="currentColor" font-size={letter}>
              <rect x={x} y={y} width={side} height={side} fill="none" stroke="currentColor" />
              <text x={x} y={y + side + 1.2 * letter}>
                {one}
              </text>
              {n > 0 && (
                <text x={x} y={y + side + 2.4 * letter}>
                  + {two}
                </text>
              )}
            </g>
          );
        }),
      )}
    </svg>
  );
}
