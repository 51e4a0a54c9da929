import { eveningTimes, stillTakes } from '../../core/plan/evening/evening-times.ts';
import type { SmallerSheet, WashPlan } from '../../core/plan/plan.ts';
import { type Sheet, smallerSheet } from '../../core/reference/sheet.ts';
import { hoursInWords, rangeInWords } from '../../core/words/minutes.ts';
import { words } from '../../core/words/plan/words.ts';
import { inchesAcross } from '../../core/words/units.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Button } from '../../ui/controls/button.tsx';
import styles from './evening-panel.module.css';

interface EveningFitWordsProps {
  plan: WashPlan;
  studio: Pick<Studio, 'painting' | 'setReference' | 'again'>;
}

/** How the plan fits her time: what it gave up, what a hair dryer would do, and smaller sheets to take. */
export function EveningFitWords({ plan, studio }: EveningFitWordsProps) {
  const { fit } = plan;
  const times = eveningTimes(plan);
  const all = times.map(({ range }) => rangeInWords(range));
  const smaller = fit?.smaller ?? fit?.tooLong?.smaller;
  return (
    <>
      <p class="quiet">
        {all.length === 1
          ? `It may take ${all[0]}: drying takes its own time.`
          : `The evenings may take ${all.join(' and ')}.`}
      </p>
      {fit?.tooLong && <p class={styles.tooLong}>{words(stillTakes(times))}</p>}
      {fit?.dryer && <p>{words(fit.dryer)}</p>}
      {fit && smaller && (
        <SmallerSheets
          said={
            fit.smaller
              ? `On a smaller sheet it fits your ${hoursInWords(fit.minutes)} whole, with nothing given up:`
              : 'A smaller sheet of the same shape is sooner painted, though it dries no sooner:'
          }
          smaller={smaller}
          studio={studio}
        />
      )}
      {fit && fit.gaveUp.length > 0 && (
        <div class={styles.given}>
          <p>
            To {fit.tooLong ? 'come near' : 'fit'} {hoursInWords(fit.minutes)} on this sheet it
            gives up:
          </p>
          <ul>
            {fit.gaveUp.map(words).map((said) => (
              <li key={said}>{said}</li>
            ))}
          </ul>
        </div>
      )}
      {fit && fit.gaveUp.length === 0 && !fit.tooLong && (
        <p>It fits your {hoursInWords(fit.minutes)} with nothing given up.</p>
      )}
    </>
  );
}

const shareWords = new Map([
  [1 / 2, 'Half the sheet'],
  [1 / 4, 'A quarter of the sheet'],
]);

const sizeOf = ({ widthMm, heightMm }: Sheet): string =>
  `${Math.round(widthMm)} × ${Math.round(heightMm)} mm (${inchesAcross(widthMm, heightMm)})`;

/** Smaller sheets of the same shape: taken by a touch, never by themselves. */
function SmallerSheets({
  said,
  smaller,
  studio,
}: {
  said: string;
  smaller: readonly SmallerSheet[];
  studio: EveningFitWordsProps['studio'];
}) {
  const reference = studio.painting.value?.reference;
  if (!reference) return null;
  const offers = smaller.flatMap(({ share, minutes }) => {
    const sheet = smallerSheet(reference.sheet, share);
    return sheet ? [{ share, minutes, sheet }] : [];
  });
  if (offers.length === 0) return null;
  return (
    <div class={styles.sheets}>
      <p>{said}</p>
      {offers.map(({ share, minutes, sheet }) => (
        <Button
          key={share}
          onClick={async () => {
            await studio.setReference(sheet, reference.crop);
            studio.again();
          }}
        >
          {shareWords.get(share) ?? 'Smaller'}, {sizeOf(sheet)}: about {hoursInWords(minutes)}
        </Button>
      ))}
    </div>
  );
}
