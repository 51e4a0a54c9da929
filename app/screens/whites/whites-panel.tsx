import { placeOnPhoto } from '../../model/stroke-on-photo.ts';
import { sizeInWords, whitesSentence } from '../../model/white-words.ts';
import type { WhiteWay } from '../../model/whites.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import type { Decided } from '../common/decide-place.tsx';
import { SliderRow } from '../common/slider-row.tsx';
import type { WhitesState, WhiteTool } from './use-whites.ts';
import { WhiteLegend } from './white-legend.tsx';
import { WhiteList } from './white-list.tsx';
import styles from './whites-panel.module.css';

interface WhitesPanelProps {
  studio: Studio;
  now: Decided;
  state: WhitesState;
}

const hints: Readonly<Record<WhiteTool, string>> = {
  touch: 'Touch a white in the picture to find it in the list.',
  keep: 'Brush over what is to stay bare paper, however dark it is in the photo.',
  paint: 'Brush over a white that is to be painted after all.',
};

/** What is drawn with, the whites and how each is kept. */
export function WhitesPanel({ studio, now, state }: WhitesPanelProps) {
  const { painting, seen } = now;
  const { reading } = seen;
  const { tool, brush, view, missed } = state;
  const whites = state.whites.value;
  const longSideMm = Math.max(reading.sheet.widthMm, reading.sheet.heightMm);
  const choose = (index: number): void => {
    state.chosen.value = { of: reading, index };
    missed.value = false;
    tool.value = 'touch';
  };
  const decide = (index: number, way: WhiteWay | null): void => {
    const white = whites[index];
    if (white) choose(index);
    const place = white ? placeOnPhoto(painting.reference, white.at) : null;
    void studio.decide({ kind: 'white-way', place, way });
  };
  return (
    <div class={styles.panel}>
      <ChoiceRow
        label="What a touch does"
        choices={[
          ['touch', 'Touch a white'],
          ['keep', 'Keep white'],
          ['paint', 'Paint over'],
        ]}
        chosen={tool.value}
        onChoose={(next) => {
          tool.value = next;
          missed.value = false;
        }}
      />
      {tool.value !== 'touch' && (
        <SliderRow
          label="Brush"
          said={`${sizeInWords(brush.value * longSideMm)} on the sheet`}
          min={0.005}
          max={0.12}
          step={0.0025}
          value={brush.value}
          onMove={(value) => {
            brush.value = value;
          }}
          onSettle={() => {}}
        />
      )}
      <p class={styles.quiet}>{hints[tool.value]}</p>
      <p class={styles.sentence} role="status" data-testid="whites-sentence">
        {missed.value
          ? 'There is no white near that place.'
          : whitesSentence(whites, reading.reserves.share)}
      </p>
      {whites.length > 0 && <WhiteLegend whites={whites} />}
      <ChoiceRow
        label="What lies under the whites"
        choices={[
          ['colour', 'On colour'],
          ['grey', 'On grey'],
        ]}
        chosen={view.value}
        onChoose={(next) => {
          view.value = next;
        }}
      />
      {whites.length > 0 && (
        <WhiteList
          whites={whites}
          reading={reading}
          index={state.index.value}
          onShow={choose}
          onWay={decide}
        />
      )}
    </div>
  );
}
