import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { cssColour } from '../../core/colour/lab.ts';
import { valueOfLightness } from '../../core/colour/lightness.ts';
import { familiesAsPainted } from '../../core/reading/families/paint-order.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { formatCount } from '../../core/words/numbers.ts';
import { warningInWords } from '../../core/words/reading/warnings.ts';
import { formatPercent } from '../../core/words/reading-words.ts';
import { valueInFigures } from '../../core/words/values.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo, type PaintingScreen } from '../../state/router.ts';
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

/** What else was seen; what to check; what to change. */
export function StudyFacts({ studio, paintingId, seen, tools }: StudyFactsProps) {
  const numbers = useSignal(false);
  const { reading } = seen;
  return (
    <div class="stack">
      {reading.warnings.length > 1 && (
        <details>
          <summary class={styles.summary}>What else was seen</summary>
          <ul class={styles.more}>
            {reading.warnings.slice(1).map((warning) => (
              <li key={warning.code}>{warningInWords(warning)}</li>
            ))}
          </ul>
        </details>
      )}
      <Places title="Check these" rows={checkRows(reading)} paintingId={paintingId} />
      <Places title="Change it" rows={changeRows(reading)} paintingId={paintingId} />
      <BandCount studio={studio} reading={reading} />
      <RangeChoice studio={studio} seen={seen} tools={tools} />
      <label class={styles.switch}>
        <input
          type="checkbox"
          checked={numbers.value}
          onChange={(event) => {
            numbers.value = event.currentTarget.checked;
          }}
        />
        Show the figures
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
            <td>{valueInFigures(band.value)}</td>
            <td>{formatPercent(band.share)}</td>
            <td>L* {band.plannedLightness.toFixed(0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

type Row = readonly [screen: PaintingScreen, name: string, stands: ComponentChildren];

/** What the study found, for her to look at. */
function checkRows({ reserves, subject }: Reading): Row[] {
  const whites = `${formatPercent(reserves.share)}, in ${formatCount(reserves.count, 'shape')}`;
  const subjectShare = subject ? `${formatPercent(subject.share)} of the sheet` : 'not drawn yet';
  return [
    ['whites', 'Whites to keep', reserves.count ? whites : 'none'],
    ['subject', 'Subject and background', subjectShare],
  ];
}

/** What she may want otherwise. */
function changeRows(reading: Reading): Row[] {
  return [
    ['edges', 'Soften or lose edges', ''],
    ['colours', 'Colours and shapes', <ColourStrip key="colours" reading={reading} />],
    ['hues', 'Colour scheme', ''],
    ['changes', 'Change the picture', ''],
  ];
}

/** The colours of the picture, each as wide as its share. */
function ColourStrip({ reading }: { reading: Reading }) {
  return (
    <span class={styles.colours}>
      <span class="spoken">
        {familiesAsPainted(reading)
          .map(({ name }) => name)
          .join(', ')}
      </span>
      {familiesAsPainted(reading).map(({ id, lab, share }) => (
        <span key={id} style={{ background: cssColour(lab), flexGrow: Math.max(share, 0.04) }} />
      ))}
    </span>
  );
}

interface PlacesProps {
  title: string;
  rows: readonly Row[];
  paintingId: string;
}

/** Ways to where she decides about the reading, each with how it stands. */
function Places({ title, rows, paintingId }: PlacesProps) {
  return (
    <nav aria-label={title}>
      <h2 class={styles.heading}>{title}</h2>
      <ul class={styles.rows}>
        {rows.map(([screen, name, stands]) => (
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
