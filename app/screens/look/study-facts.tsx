import { useSignal } from '@preact/signals';
import { valueOfLightness } from '../../core/colour/lightness.ts';
import { edgeShares } from '../../core/reading/edges/edge.ts';
import { familiesAsPainted } from '../../core/reading/families/paint-order.ts';
import { massesInWords } from '../../core/reading/masses.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { formatCount } from '../../core/words/numbers.ts';
import { formatPercent, studySentence } from '../../core/words/reading-words.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo, type PaintingScreen } from '../../state/router.ts';
import { ShareBar } from '../../ui/controls/share-bar.tsx';
import { ValueScale } from '../../ui/controls/value-scale.tsx';
import { BandCount, RangeChoice } from './band-count.tsx';
import styles from './study-facts.module.css';
import type { ToolsState } from './use-study-tools.ts';

interface StudyFactsProps {
  studio: Studio;
  paintingId: string;
  seen: OpenedReading;
  tools: ToolsState;
}

/** The one sentence that matters most, then the whites, the choices and the colours. */
export function StudyFacts({ studio, paintingId, seen, tools }: StudyFactsProps) {
  const numbers = useSignal(false);
  const { reading } = seen;
  return (
    <div class="stack">
      <p class={styles.sentence} data-testid="sentence">
        {studySentence(reading)}
      </p>
      {reading.warnings.length > 1 && (
        <details>
          <summary class={styles.summary}>What else was seen</summary>
          <ul class={styles.more}>
            {reading.warnings.slice(1).map((warning) => (
              <li key={warning.code}>{warning.text}</li>
            ))}
          </ul>
        </details>
      )}
      <DecideRows reading={reading} paintingId={paintingId} />
      <BandCount studio={studio} reading={reading} />
      {reading.masses && <p class="quiet">{massesInWords(reading.masses)}</p>}
      <RangeChoice studio={studio} seen={seen} tools={tools} />
      <h2 class={styles.heading}>Colours</h2>
      <ul class={styles.families}>
        {familiesAsPainted(reading).map((family) => (
          <li key={family.id}>
            <ShareBar family={family} among={reading.families} />
            {family.name}
          </li>
        ))}
      </ul>
      <label class={styles.switch}>
        <input
          type="checkbox"
          checked={numbers.value}
          onChange={(event) => {
            numbers.value = event.currentTarget.checked;
          }}
        />
        Numbers
      </label>
      {numbers.value && <StudyNumbers reading={reading} />}
      {tools === 'missing' && (
        <p class="quiet">
          Some tools of this page did not come through. Open it once more with a network.
        </p>
      )}
    </div>
  );
}

/** The bands in figures, and how much of the picture has each value, for who wants them. */
function StudyNumbers({ reading }: { reading: Reading }) {
  return (
    <>
      <BandTable reading={reading} />
      <figure>
        <figcaption class="quiet">How much of the picture has each value</figcaption>
        <svg
          class={styles.histogram}
          viewBox="0 0 100 100"
          preserveAspectRatio="none"
          aria-hidden="true"
          data-testid="histogram"
        >
          <path d={histogramShape(reading.lightness.histogram)} />
        </svg>
        <ValueScale />
      </figure>
    </>
  );
}

/** Where each bin begins along the scale, 0..100; bin = L* x 2.55. */
const places = Array.from({ length: 257 }, (_, bin) => 10 * valueOfLightness((bin - 0.5) / 2.55));

/** So many of the fullest bins may reach over the top: a burnt-out sky would flatten all the rest (own). */
const cutOff = 6;

/**
 * An SVG path over the value scale, 100 wide and 100 high: how much of the picture has each value.
 * Heights are square roots, so that small lights and darks are still seen beside large masses.
 */
function histogramShape(histogram: readonly number[]): string {
  const fullestFirst = [...histogram].sort((x, y) => y - x);
  const most = Math.sqrt(fullestFirst[cutOff] || fullestFirst[0] || 1);
  const tops = histogram.map((pixels, bin) => {
    const height = 100 - (100 * Math.min(most, Math.sqrt(pixels))) / most;
    return `V${height.toFixed(1)}H${(places[bin + 1] ?? 100).toFixed(2)}`;
  });
  return `M0 100${tops.join('')}V100Z`;
}

function BandTable({ reading }: { reading: Reading }) {
  return (
    <table class={styles.numbers}>
      <caption class="quiet">
        Lightness L* 0 black to 100 white; value 0 black to 10 white (ASTM D1535)
      </caption>
      <thead>
        <tr>
          <th scope="col">Band</th>
          <th scope="col">L* from – to</th>
          <th scope="col">Value</th>
          <th scope="col">Area</th>
          <th scope="col">On the sheet</th>
        </tr>
      </thead>
      <tbody>
        {reading.bands.map((band) => (
          <tr key={band.band}>
            <th scope="row">{band.band}</th>
            <td>
              {band.from.toFixed(0)} – {band.to.toFixed(0)}
            </td>
            <td>{band.value.toFixed(1)}</td>
            <td>{formatPercent(band.share)}</td>
            <td>L* {band.plannedLightness.toFixed(0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function rowsOf(reading: Reading): readonly (readonly [PaintingScreen, string, string])[] {
  const { reserves, edges = [], families, subject } = reading;
  const hard = edgeShares(edges).find(({ kind }) => kind === 'hard')?.share ?? 0;
  return [
    [
      'whites',
      'Whites to keep',
      reserves.count
        ? `${formatPercent(reserves.share)}, in ${formatCount(reserves.count, 'shape')}`
        : 'none',
    ],
    ['edges', 'Edges', edges.length ? `${formatPercent(hard)} of them hard` : 'none'],
    ['colours', 'Colours', formatCount(families.length, 'group')],
    ['hues', 'Which colours', 'of the photo, your own, one paint'],
    ['subject', 'Subject and ground', subject ? formatPercent(subject.share) : 'one sheet'],
    ['changes', 'Paint it otherwise', 'leave out, lighter, darker'],
  ];
}

/** What she can decide about the reading, each on a page of its own, with how it stands. */
function DecideRows({ reading, paintingId }: { reading: Reading; paintingId: string }) {
  return (
    <nav aria-label="Decide for yourself">
      <ul class={styles.rows}>
        {rowsOf(reading).map(([screen, name, stands]) => (
          <li key={screen}>
            <a class={styles.row} href={linkTo(paintingId, screen)}>
              <span class={styles.name}>{name}</span>
              <span class={styles.stands}>{stands}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
