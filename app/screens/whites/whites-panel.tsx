import { lineRoundWhite } from '../../core/reading/whites/refuse-white.ts';
import {
  countsByWay,
  type White,
  type WhiteWay,
  whiteWays,
} from '../../core/reading/whites/whites.ts';
import { placeOnPhoto, strokeOnPhoto } from '../../core/reference/photo-stroke.ts';
import { sizeInWords } from '../../core/words/numbers.ts';
import { wayLetters, wayWords, whitesSentence } from '../../core/words/reading/whites.ts';
import { whiteLines } from '../../drawing/line-layers.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { SliderRow } from '../../ui/controls/slider-row.tsx';
import type { DecisionContext } from '../../ui/layout/decision-screen.tsx';
import type { WhitesState, WhiteTool } from './use-whites.ts';
import { WhiteList } from './white-list.tsx';
import styles from './whites-panel.module.css';

interface WhitesPanelProps {
  studio: Studio;
  context: DecisionContext;
  state: WhitesState;
}

const hints: Readonly<Record<WhiteTool, string>> = {
  touch: 'Touch a white in the picture to find it in the list.',
  keep: 'Brush over what should stay white paper, even if it is dark in the photo.',
  paint: 'Brush over any white you want painted after all.',
};

/** What is drawn with, the whites and how each is kept. */
export function WhitesPanel({ studio, context, state }: WhitesPanelProps) {
  const { painting, seen } = context;
  const { reading } = seen;
  const { tool, brush, view, missed } = state;
  const whites = state.whites.value;
  const longSideMm = Math.max(reading.sheet.widthMm, reading.sheet.heightMm);
  const choose = (index: number): void => {
    state.chosen.value = { reading, index };
    missed.value = false;
    tool.value = 'touch';
  };
  const decide = (index: number, way: WhiteWay | null): void => {
    const white = whites[index];
    if (white) choose(index);
    const place = white ? placeOnPhoto(painting.reference, white.at) : null;
    void studio.decide({ kind: 'white-way', place, way });
  };
  const refuse = (index: number): void => {
    const { found } = state;
    if (!found.value) return;
    const path = lineRoundWhite(found.value.map, reading.raster, index);
    const stroke = strokeOnPhoto(painting.reference, { path, brush: 0 });
    void studio.decide({ kind: 'white', mode: 'paint', ...stroke });
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
      <p class="quiet">{hints[tool.value]}</p>
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
          onRefuse={refuse}
          bitmap={context.pictures.reference}
          outlines={state.found.value?.outlines ?? []}
          onWay={decide}
        />
      )}
    </div>
  );
}

/** Shares of the picture's long side, to the sample's own units. */
const scale = 1000;

/** How each way is drawn, and how many whites go that way. */
function WhiteLegend({ whites }: { whites: readonly White[] }) {
  const counts = countsByWay(whites);
  return (
    <ul class={styles.legend} aria-label="How whites are kept">
      {whiteWays.map((way) => (
        <li key={way}>
          <svg class={styles.sample} viewBox="0 0 44 18" aria-hidden="true">
            {[2, 0].map((casing) => (
              <path
                key={casing}
                class={casing ? styles.casing : undefined}
                d="M4 9H40"
                stroke={casing ? undefined : 'black'}
                stroke-linecap="round"
                stroke-width={whiteLines[way].width * scale + casing}
                stroke-dasharray={whiteLines[way].dash.map((share) => share * scale).join(' ')}
              />
            ))}
          </svg>
          <span>
            {wayLetters[way]}, {wayWords[way].toLowerCase()}:{' '}
            <strong class={styles.count}>{counts[way]}</strong>
          </span>
        </li>
      ))}
    </ul>
  );
}
