import { useSignal } from '@preact/signals';
import { readingWishes } from '../../core/decisions/wishes.ts';
import { fewestBands, mostBands } from '../../core/limits.ts';
import type { ProgressPhase, RangeMode, Reading } from '../../core/reading/reading.ts';
import { canOpenUp } from '../../core/reading/tone-range.ts';
import { bandsWhyInWords } from '../../core/words/reading/warnings.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import styles from './study-facts.module.css';
import type { ToolsState } from './use-study-tools.ts';

const readingStages: readonly ProgressPhase[] = [
  'opening',
  'looking',
  'values',
  'colours',
  'shapes',
];

/** How many values, why so many, and the way back from her own choice to what the picture asks for. */
export function BandCount({ studio, reading }: { studio: Studio; reading: Reading }) {
  const { bands, proposedBands } = reading;
  const bandsWhy = bandsWhyInWords(reading.bandsWhy);
  /** What she asked for last, until the picture is read by it: a second tap goes on from there. */
  const asked = useSignal<{ over: Reading; count: number } | null>(null);
  const count = asked.value?.over === reading ? asked.value.count : bands.length;
  const painting = studio.painting.value;
  const wishes = painting && readingWishes(painting.decisions, painting.reference);
  const own = wishes?.limits !== undefined || (wishes?.bands ?? proposedBands) !== proposedBands;
  const work = studio.work.value;
  const readsAnew = work !== null && readingStages.includes(work.stage);
  const take = (next: number): void => {
    asked.value = { over: reading, count: next };
    void studio.decide({ kind: 'bands', count: next });
  };
  return (
    <>
      <div class={styles.choice}>
        <span>How many values</span>
        <span class={styles.stepper}>
          <Button
            aria-label="One value fewer"
            disabled={count <= fewestBands}
            onClick={() => take(count - 1)}
          >
            −
          </Button>
          <output aria-live="polite">{count}</output>
          <Button
            aria-label="One value more"
            disabled={count >= mostBands}
            onClick={() => take(count + 1)}
          >
            +
          </Button>
        </span>
      </div>
      <p class="quiet" role="status">
        {readsAnew
          ? 'Reading the picture again …'
          : wishes?.limits
            ? 'The limits between the values are your own.'
            : own
              ? `What the picture asks for: ${proposedBands}. ${bandsWhy}`
              : bandsWhy}
      </p>
      {own && proposedBands >= fewestBands && (
        <Button onClick={() => take(proposedBands)}>Set the values by the picture</Button>
      )}
    </>
  );
}

interface RangeChoiceProps {
  studio: Studio;
  seen: OpenedReading;
  tools: ToolsState;
}

/** Offered where the light is flat. As photographed or opened up: side by side as pictures where there are any, else in words. */
export function RangeChoice({ studio, seen, tools }: RangeChoiceProps) {
  const { reading, lightnessMap } = seen;
  const choose = (mode: RangeMode): void => {
    if (mode !== reading.range.mode) void studio.decide({ kind: 'range', mode });
  };
  if (!canOpenUp(reading.range) && reading.range.mode === 'photographed') return null;
  const pictured = typeof tools === 'object' && lightnessMap !== undefined;
  return (
    <>
      <h2 class={styles.heading}>Stretch the values?</h2>
      {pictured ? (
        <tools.RangePictures reading={reading} lightnessMap={lightnessMap} onChoose={choose} />
      ) : (
        <ChoiceRow
          label="How dark and light the sheet becomes"
          choices={[
            ['photographed', 'As in the photo'],
            ['opened', 'Full range'],
          ]}
          chosen={reading.range.mode}
          onChoose={choose}
        />
      )}
      <p class="quiet">
        {reading.range.mode === 'opened'
          ? 'Full range: the lights are spread until the lightest is paper white.'
          : 'As in the photo: every value your paints can reach stays as it is.'}
      </p>
    </>
  );
}
